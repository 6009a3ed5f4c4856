import { crc32, deflateRawSync } from 'node:zlib';

/** What a test puts into a cell: a number with the style of a day is written as `{ serial }`, a formula with the value kept for it. */
export type XlsxCell = string | number | boolean | null | { readonly serial: number } | { readonly formula: string; readonly value: number };

export interface XlsxSheet {
  readonly name: string;
  readonly rows: readonly (readonly XlsxCell[])[];
  /** Ranges such as `A1:C1`. */
  readonly merged?: readonly string[];
}

/** A workbook as a spreadsheet program writes it (ECMA-376): zip, shared strings, styles, one part a sheet. */
export function xlsxFile(sheets: readonly XlsxSheet[]): Buffer {
  const strings: string[] = [];
  const parts: [string, string][] = sheets.map((sheet, at) => [`xl/worksheets/sheet${at + 1}.xml`, sheetXml(sheet, strings)]);
  return zipFile([
    ['[Content_Types].xml', '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>'],
    ['xl/workbook.xml', `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>${sheets.map(({ name }, at) => `<sheet name="${escaped(name)}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`).join('')}</sheets></workbook>`],
    ['xl/_rels/workbook.xml.rels', `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${sheets.map((_, at) => relation(`rId${at + 1}`, 'worksheet', `worksheets/sheet${at + 1}.xml`)).join('')}${relation('rIdS', 'styles', 'styles.xml')}${relation('rIdT', 'sharedStrings', 'sharedStrings.xml')}</Relationships>`],
    ['xl/styles.xml', '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>'],
    ...parts,
    ['xl/sharedStrings.xml', `<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${strings.map((text) => `<si><t xml:space="preserve">${escaped(text)}</t></si>`).join('')}</sst>`],
  ]);
}

function relation(id: string, type: string, target: string): string {
  return `<Relationship Id="${id}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/${type}" Target="${target}"/>`;
}

function sheetXml({ rows, merged = [] }: XlsxSheet, strings: string[]): string {
  const at = new Map(strings.map((text, index) => [text, index]));
  const shared = (text: string) => {
    const known = at.get(text);
    if (known !== undefined) return known;
    at.set(text, strings.length);
    return strings.push(text) - 1;
  };
  const cell = (value: XlsxCell, place: string): string => {
    if (value === null) return '';
    if (typeof value === 'string') return `<c r="${place}" t="s"><v>${shared(value)}</v></c>`;
    if (typeof value === 'number') return `<c r="${place}"><v>${value}</v></c>`;
    if (typeof value === 'boolean') return `<c r="${place}" t="b"><v>${value ? 1 : 0}</v></c>`;
    if ('serial' in value) return `<c r="${place}" s="1"><v>${value.serial}</v></c>`;
    return `<c r="${place}"><f>${escaped(value.formula)}</f><v>${value.value}</v></c>`;
  };
  const data = rows.map((row, index) => `<row r="${index + 1}">${row.map((value, column) => cell(value, `${String.fromCharCode(65 + column)}${index + 1}`)).join('')}</row>`).join('');
  const merges = merged.length === 0 ? '' : `<mergeCells>${merged.map((range) => `<mergeCell ref="${range}"/>`).join('')}</mergeCells>`;
  return `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${data}</sheetData>${merges}</worksheet>`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}

/** A zip archive (APPNOTE 4.3): each part deflated, then the central directory. */
export function zipFile(files: readonly (readonly [string, string])[]): Buffer {
  const locals: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const [path, text] of files) {
    const name = Buffer.from(path);
    const bytes = Buffer.from(text);
    const packed = deflateRawSync(bytes);
    const fixed = Buffer.alloc(26);
    fixed.writeUInt16LE(20, 0);
    fixed.writeUInt16LE(8, 4);
    fixed.writeUInt32LE(crc32(bytes), 10);
    fixed.writeUInt32LE(packed.length, 14);
    fixed.writeUInt32LE(bytes.length, 18);
    fixed.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from([0x50, 0x4b, 3, 4]), fixed, name, packed]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    directory.push(Buffer.concat([Buffer.from([0x50, 0x4b, 1, 2, 20, 0]), fixed, tail, name]));
    locals.push(local);
    offset += local.length;
  }
  const central = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(files.length, 8);
  end.writeUInt16LE(files.length, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...locals, central, end]);
}
