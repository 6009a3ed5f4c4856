import { createHash } from 'node:crypto';
import { applyMapping, readSheetRow, type MappedRow } from '#core/exchange/mapping/applyMapping.ts';
import { dataOf, findings } from '#core/exchange/mapping/findings.ts';
import { guessMapping } from '#core/exchange/mapping/guessMapping.ts';
import { openQuestions } from '#core/exchange/mapping/openQuestions.ts';
import { readDelimited } from '#core/exchange/mapping/readDelimited.ts';
import { typedCells } from '#core/exchange/mapping/typedCells.ts';
import { savedFor, savedKey, withSaved } from '#core/exchange/mapping/savedMappings.ts';
import { findHeader, type RawSheet, type Sheet } from '#core/exchange/mapping/sheet.ts';
import { largestFile } from '#core/exchange/readCsv.ts';
import { readRow } from '#core/journal/readRow.ts';
import type { SheetLook, SheetMapping } from '#shared/contract/sheets.ts';
import type { Column } from '#shared/entryForms.ts';
import { FaultError, refuse, type Answer, type RowFault } from '#shared/faults.ts';
import type { Handlers } from './desk.ts';
import { importRead, type FileImport } from './importFile.ts';
import { enterImport, importReport } from './importReport.ts';
import type { RowAt } from './keptRows.ts';
import type { Book } from './openBook.ts';
import { isOldOffice, isZip, readXlsx } from './readXlsx.ts';

type Names = 'sheets.look' | 'sheets.preview' | 'sheets.enter';

interface FileIn {
  readonly name: string;
  readonly base64: string;
}

interface ReadFile {
  readonly hash: string;
  readonly name: string;
  readonly sheets: readonly { readonly raw: RawSheet; readonly found: Answer<Sheet> }[];
}

/** The file read last for each open book: a mapping is changed many times over the same file. */
const lastRead = new WeakMap<Book, ReadFile>();
const shownRows = 10;
const shownSamples = 3;

export const sheetHandlers: Handlers<Names> = {
  'sheets.look': async ({ file, sheet: name, mapping, afresh, kind }, context) => {
    const book = context.open();
    const read = await readFile(book, file);
    const sheet = chosenSheet(read, name);
    if (mapping !== undefined) checkHeaders(sheet, mapping);
    const kept = mapping === undefined && kind === undefined && afresh !== true ? savedFor((await book.store.settings()).get(savedKey), sheet.headers) : null;
    const used = mapping ?? kept ?? guessMapping(sheet, [sheet.name, file.name], kind);
    return look(read, sheet, used, mapping !== undefined ? 'given' : kept !== null ? 'saved' : 'guessed');
  },
  'sheets.preview': async ({ file, sheet, mapping, items }, context) => {
    const book = context.open();
    const read = await readFile(book, file);
    return importReport(calledBy(read, sheet), read.hash, await importSheet(book, chosenSheet(read, sheet), mapping, items), await book.today(context.options.now().day));
  },
  'sheets.enter': async ({ file, sheet, mapping, items, sha256: looked, position }, context) => {
    const book = context.open();
    const read = await readFile(book, file);
    if (read.hash !== looked || position !== (await book.store.position())) {
      throw new FaultError(refuse('moved-on', 'The file or the book has changed since the preview, so nothing was entered.', { mend: 'Look at the preview again, then enter it.' }));
    }
    const found = await importSheet(book, chosenSheet(read, sheet), mapping, items);
    const called = calledBy(read, sheet);
    const gesture = await enterImport(book.store, found, called, context.options.now().stamp);
    await book.store.keepSettings(new Map([[savedKey, withSaved((await book.store.settings()).get(savedKey), mapping)]]));
    return importReport(called, read.hash, found, await book.today(context.options.now().day), gesture);
  },
};

async function readFile(book: Book, file: FileIn): Promise<ReadFile> {
  const bytes = Buffer.from(file.base64, 'base64');
  const hash = createHash('sha256').update(bytes).digest('hex');
  const last = lastRead.get(book);
  if (last?.hash === hash && last.name === file.name) return last;
  if (bytes.length > largestFile) throw new FaultError(refuse('file-unreadable', `${file.name} is larger than 64 MiB.`, { mend: 'Cut it into several files, each with the row of names.' }));
  if (bytes.length === 0) throw new FaultError(refuse('file-unreadable', `${file.name} is empty.`, { mend: 'Choose a file with a row of names and one row for each record.' }));
  const raw = await rawSheets(bytes, file.name);
  if (!raw.ok) throw new FaultError(raw);
  const many = raw.value.length > 1;
  const read: ReadFile = { hash, name: file.name, sheets: raw.value.map((one) => ({ raw: one, found: findHeader(one, many ? `The sheet “${one.name}”` : file.name) })) };
  lastRead.set(book, read);
  return read;
}

async function rawSheets(bytes: Uint8Array, fileName: string): Promise<Answer<RawSheet[]>> {
  if (isZip(bytes) || isOldOffice(bytes) || /\.xlsx?$/i.test(fileName)) return readXlsx(bytes, fileName);
  const table = readDelimited(bytes, fileName);
  return table.ok ? { ok: true, value: [table.value] } : table;
}

/** The sheet of that name, or the first that can be read. */
function chosenSheet(read: ReadFile, name: string | undefined): Sheet {
  const chosen = name === undefined ? (read.sheets.find(({ found }) => found.ok) ?? read.sheets[0]) : read.sheets.find(({ raw }) => raw.name === name);
  if (chosen === undefined) throw new FaultError(refuse('file-unreadable', name === undefined ? `${read.name} holds no sheet.` : `${read.name} has no sheet called “${name}”.`, { mend: 'Choose the file again.' }));
  if (!chosen.found.ok) throw new FaultError(chosen.found);
  return chosen.found.value;
}

function calledBy(read: ReadFile, sheet: string): string {
  return read.sheets.length > 1 ? `${read.name}, ${sheet}` : read.name;
}

function checkHeaders(sheet: Sheet, mapping: SheetMapping): void {
  if (mapping.columns.length !== sheet.headers.length || !mapping.columns.every(({ header }, at) => header === sheet.headers[at])) {
    throw new FaultError(refuse('moved-on', 'The columns of the sheet are not the ones that were looked at.', { mend: 'Choose the file again.' }));
  }
}

async function importSheet(book: Book, sheet: Sheet, mapping: SheetMapping, items: Readonly<Record<string, string>> | undefined): Promise<FileImport> {
  checkHeaders(sheet, mapping);
  const [question] = openQuestions(sheet, mapping);
  if (question !== undefined) throw new FaultError(refuse('refused', question.sentence, { mend: 'Decide it on the page, then look at the records again.' }));
  const { rows, aside } = applyMapping(sheet, mapping);
  const found = await importRead(book.store, rows.map(({ line, cells }) => ({ line, cells, stray: null })), 'month-first', aside, rowsOf(sheet, mapping, rows), items);
  return { ...found, toSortOut: found.toSortOut.map((fault) => inTheirWords(fault, mapping)), unsorted: found.unsorted.map((row) => ({ ...row, fault: inTheirWords(row.fault, mapping) })) };
}

/** The rows of the sheet as they were typed; one that could not be read keeps each cell under what its column becomes. */
function rowsOf(sheet: Sheet, mapping: SheetMapping, mapped: readonly MappedRow[]): RowAt {
  const own = new Map(sheet.rows.map((row) => [row.line, row]));
  const readable = new Map(mapped.map((row) => [row.line, row.cells]));
  return (line) => {
    const row = own.get(line);
    if (row === undefined) throw new Error(`the sheet has no row on line ${line}`);
    const typed = mapping.columns.flatMap(({ header }, at) => (row.cells[at] == null ? [] : [{ column: header, value: row.cells[at].text }]));
    const cells = readable.get(line);
    return { cells: cells ?? typedCells(row, mapping), typed, order: cells === undefined ? (mapping.dateOrder ?? 'month-first') : 'month-first', unread: cells === undefined };
  };
}

/** A fault names the exchange form's column; the person knows it by their own header. */
function inTheirWords(fault: RowFault, mapping: SheetMapping): RowFault {
  const header = mapping.columns.find(({ becomes }) => becomes === fault.column)?.header;
  return header === undefined ? fault : { ...fault, column: header };
}

function look(read: ReadFile, sheet: Sheet, mapping: SheetMapping, origin: SheetLook['origin']): SheetLook {
  const found = findings(sheet, mapping);
  return {
    sha256: read.hash,
    sheets: read.sheets.map(({ raw, found: one }) => ({ name: raw.name, rows: one.ok ? one.value.rows.length : 0, problem: one.ok ? null : one.sentence })),
    sheet: sheet.name,
    headerLine: sheet.headerLine,
    above: [...sheet.above],
    columns: sheet.headers.map((header, at) => {
      const cells = dataOf(sheet, at);
      return { header, filled: cells.length, samples: [...new Set(cells.map((cell) => cell.text))].slice(0, shownSamples).map((text) => text.slice(0, 80)) };
    }),
    mapping,
    origin,
    days: found.days,
    times: found.times,
    decimal: found.decimal,
    questions: openQuestions(sheet, mapping),
    sample: sheet.rows.slice(0, shownRows).map((row) => {
      const mapped = readSheetRow(row, mapping);
      if ('sentence' in mapped) return { line: row.line, cells: {}, trouble: mapped };
      const reading = readRow(mapped.cells, 'month-first');
      return { line: row.line, cells: mapped.cells, trouble: reading.ok ? null : inTheirWords({ line: row.line, column: reading.trouble.column as Column | null, value: reading.trouble.value, sentence: reading.trouble.sentence }, mapping) };
    }),
  };
}
