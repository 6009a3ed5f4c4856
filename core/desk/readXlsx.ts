import readXlsxFile, { InvalidInputError, InvalidSpreadsheetError } from 'read-excel-file/universal';
import type { RawSheet, SheetCell } from '#core/exchange/mapping/sheet.ts';
import { refuse, type Answer } from '#shared/faults.ts';

/** How much a workbook may hold once unpacked; a small file can say it holds far more than the machine. */
const mostUnpacked = 400 * 1024 * 1024;
const oldOffice = [0xd0, 0xcf, 0x11, 0xe0];
/** `EncryptedPackage` as an Office container names it, in UTF-16 (MS-OFFCRYPTO 2.2). */
const encrypted = Buffer.from('EncryptedPackage', 'utf16le');

export function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

export function isOldOffice(bytes: Uint8Array): boolean {
  return oldOffice.every((byte, at) => bytes[at] === byte);
}

/** The sheets of an XLSX workbook: formulas by the values the file holds for them, merged cells by their first. */
export async function readXlsx(bytes: Uint8Array, fileName: string): Promise<Answer<RawSheet[]>> {
  if (isOldOffice(bytes)) {
    return Buffer.from(bytes).includes(encrypted)
      ? unreadable(`${fileName} is protected by a password.`, 'Open it, save it without the password, and choose that file.')
      : unreadable(`${fileName} is in the old XLS form.`, 'Open it and save it as XLSX, or as CSV UTF-8.');
  }
  if (!isZip(bytes)) return unreadable(`${fileName} is not an XLSX file, whatever its name says.`, 'Choose the spreadsheet itself, saved as XLSX or CSV UTF-8.');
  const unpacked = unpackedSize(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  if (unpacked === null) return broken(fileName);
  if (unpacked > mostUnpacked) return unreadable(`${fileName} holds more than can be read at once.`, 'Save the sheet with the records as CSV UTF-8 and choose that file.');
  try {
    const sheets = await readXlsxFile(new Uint8Array(bytes).buffer);
    return {
      ok: true,
      value: sheets.filter(({ data }) => data !== undefined).map(({ sheet, data }) => ({
        name: sheet,
        rows: data.map((row, at) => ({ line: at + 1, cells: row.map(cellOf) })),
      })),
    };
  } catch (error) {
    if (error instanceof InvalidSpreadsheetError && error.message.includes('file not found')) {
      return unreadable(`${fileName} is packed like an XLSX file and holds no spreadsheet.`, 'Choose the spreadsheet itself, saved as XLSX or CSV UTF-8.');
    }
    // The reader's own faults and those of the XML below it: whatever it stumbles on, the file is what is wrong.
    if (error instanceof InvalidInputError || error instanceof Error) return broken(fileName);
    throw error;
  }
}

function cellOf(value: unknown): SheetCell | null {
  if (value === null || value === undefined) return null;
  if (value instanceof Date) {
    // To the second: a time of day is a fraction of a day and never comes out even.
    const at = new Date(Math.round(value.getTime() / 1000) * 1000).toISOString();
    return { type: 'day', text: at.endsWith('T00:00:00.000Z') ? at.slice(0, 10) : at.slice(0, 16).replace('T', ' ') };
  }
  if (typeof value === 'number') return { type: 'number', text: String(Number(value.toPrecision(15))) };
  if (typeof value === 'boolean') return { type: 'text', text: value ? 'yes' : 'no' };
  const text = String(value).trim();
  return text === '' ? null : { type: 'text', text };
}

/** Bytes the archive says it holds, by its central directory (APPNOTE 4.3.12). Null if there is none. */
function unpackedSize(archive: Buffer): number | null {
  const end = archive.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]));
  if (end < 0 || end + 20 > archive.length) return null;
  const count = archive.readUInt16LE(end + 10);
  let at = archive.readUInt32LE(end + 16);
  let sum = 0;
  for (let entry = 0; entry < count; entry += 1) {
    if (at + 46 > archive.length || archive.readUInt32LE(at) !== 0x02014b50) return null;
    sum += archive.readUInt32LE(at + 24);
    at += 46 + archive.readUInt16LE(at + 28) + archive.readUInt16LE(at + 30) + archive.readUInt16LE(at + 32);
  }
  return sum;
}

function broken(fileName: string): Answer<never> {
  return unreadable(`${fileName} is an XLSX file that is damaged or not whole.`, 'Open it and save it again, or save the sheet as CSV UTF-8.');
}

function unreadable(sentence: string, mend: string): Answer<never> {
  return refuse('file-unreadable', sentence, { mend });
}
