import { z } from 'zod';
import { sheetMapping, type SheetMapping } from '#shared/contract/sheets.ts';

/** The setting of the book that holds the mappings entered last, newest first. */
export const savedKey = 'sheetMappings';
const mostKept = 30;
const list = z.array(sheetMapping);

/** The mapping kept for a sheet with exactly these headers in this order. A text that this program did not write is passed over. */
export function savedFor(text: string | undefined, headers: readonly string[]): SheetMapping | null {
  return readList(text).find((mapping) => sameHeaders(mapping, headers)) ?? null;
}

/** The setting's next text, with this mapping in the place of an earlier one for the same headers. */
export function withSaved(text: string | undefined, mapping: SheetMapping): string {
  const headers = mapping.columns.map(({ header }) => header);
  return JSON.stringify([mapping, ...readList(text).filter((other) => !sameHeaders(other, headers))].slice(0, mostKept));
}

function sameHeaders(mapping: SheetMapping, headers: readonly string[]): boolean {
  return mapping.columns.length === headers.length && mapping.columns.every(({ header }, at) => header === headers[at]);
}

function readList(text: string | undefined): SheetMapping[] {
  if (text === undefined) return [];
  try {
    const read = list.safeParse(JSON.parse(text));
    return read.success ? read.data : [];
  } catch (error) {
    if (error instanceof SyntaxError) return [];
    throw error;
  }
}
