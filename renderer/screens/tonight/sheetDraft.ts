import { feeds, washMethods } from '#shared/entryForms.ts';
import { columnKeys, rowIsEmpty, type Typed, type TypedRow } from './sheetColumns.ts';
import type { Remark } from './sheetRound.ts';
import type { SheetWide } from './sheetRow.ts';

/** What is kept of a sheet that is not entered yet. */
export interface SheetDraft {
  readonly typed: Typed;
  readonly wide: SheetWide;
  /** Labels of the colonies typed for, so that typing for one no longer on the sheet can still be named. */
  readonly labels: Readonly<Record<string, string>>;
  /** Questions answered with "it is so", as `keptQuestion` writes them. */
  readonly kept: readonly string[];
}

export const freshSheet: SheetDraft = { typed: {}, wide: { sample: '300', method: '', feed: '', amount: '', tare: '', lot: '', ingredient: '', until: '', also: '', hours: '', people: '', miles: '' }, labels: {}, kept: [] };

export function draftKey(yard: number, day: string): string {
  return `round:${yard}:${day}`;
}

export function isSheetKey(key: string): boolean {
  return key.startsWith('round:');
}

/** A question once answered: the same cell with another value is asked anew, because its sentence is another. */
export function keptQuestion(remark: Remark): string {
  return `${remark.colony}:${remark.column}:${remark.sentence}`;
}

export function draftIsEmpty(draft: SheetDraft): boolean {
  const { also, hours, people, miles } = draft.wide;
  return Object.values(draft.typed).every(rowIsEmpty) && `${also}${hours}${people}${miles}`.trim() === '';
}

/** What is left of a sheet after the part that was sent is entered: typing that came meanwhile or was not on the sheet. */
export function withoutSent(now: SheetDraft, { typed: sent, wide }: Pick<SheetDraft, 'typed' | 'wide'>, colonies: readonly number[]): SheetDraft {
  const typed: Record<string, TypedRow> = {};
  for (const [colony, row] of Object.entries(now.typed)) {
    const gone = colonies.includes(Number(colony)) ? sent[colony] : undefined;
    const left = Object.fromEntries(columnKeys.filter((key) => row[key] !== undefined && row[key] !== gone?.[key]).map((key) => [key, row[key]]));
    if (!rowIsEmpty(left)) typed[colony] = left;
  }
  const worked = Object.fromEntries((['also', 'hours', 'people', 'miles'] as const).map((key) => [key, now.wide[key] === wide[key] ? '' : now.wide[key]]));
  return { ...now, typed, wide: { ...now.wide, ...worked }, kept: [] };
}

export function writeDraft(draft: SheetDraft): string {
  return JSON.stringify({ form: 1, ...draft });
}

/** The draft in a kept text; null if the text is none of ours, which the screen says instead of overwriting it. */
export function readDraft(text: string): SheetDraft | null {
  let found: unknown;
  try {
    found = JSON.parse(text);
  } catch {
    return null;
  }
  if (!isRecord(found) || found['form'] !== 1 || !isRecord(found['typed']) || !isRecord(found['wide'])) return null;
  const wide = readWide(found['wide']);
  if (wide === null) return null;
  const typed: Record<string, TypedRow> = {};
  for (const [colony, row] of Object.entries(found['typed'])) {
    if (!isRecord(row)) return null;
    const cells: TypedRow = {};
    for (const key of columnKeys) if (typeof row[key] === 'string') cells[key] = row[key];
    // A draft of an earlier program, which had a column of its own for losses.
    if (typeof row['lost'] === 'string' && cells.act === undefined) cells.act = row['lost'];
    typed[colony] = cells;
  }
  return { typed, wide, labels: textRecord(found['labels']), kept: textList(found['kept']) };
}

/** What an earlier program did not have on its sheets is not said. */
function readWide(found: Record<string, unknown>): SheetWide | null {
  const wide: Record<string, unknown> = { ...freshSheet.wide, ...found };
  if (typeof found['sample'] !== 'string' || !Object.keys(freshSheet.wide).every((key) => typeof wide[key] === 'string')) return null;
  const [method, feed] = [(['', ...washMethods] as const).find((one) => one === wide['method']), (['', ...feeds] as const).find((one) => one === wide['feed'])];
  if (method === undefined || feed === undefined) return null;
  const texts = Object.fromEntries(Object.keys(freshSheet.wide).map((key) => [key, wide[key]])) as Record<keyof SheetWide, string>;
  return { ...texts, method, feed };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function textRecord(value: unknown): Record<string, string> {
  if (!isRecord(value)) return {};
  return Object.fromEntries(Object.entries(value).filter((pair): pair is [string, string] => typeof pair[1] === 'string'));
}

function textList(value: unknown): string[] {
  return Array.isArray(value) ? value.filter((item): item is string => typeof item === 'string') : [];
}
