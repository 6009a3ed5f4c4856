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

export const freshSheet: SheetDraft = { typed: {}, wide: { sample: '300', method: '' }, labels: {}, kept: [] };

export function draftKey(yard: number, day: string): string {
  return `round:${yard}:${day}`;
}

/** A question once answered: the same cell with another value is asked anew, because its sentence is another. */
export function keptQuestion(remark: Remark): string {
  return `${remark.colony}:${remark.column}:${remark.sentence}`;
}

export function draftIsEmpty(draft: SheetDraft): boolean {
  return Object.values(draft.typed).every(rowIsEmpty);
}

/** What is left of a sheet after the part that was sent is entered: typing that came meanwhile or was not on the sheet. */
export function withoutSent(now: SheetDraft, sent: Typed, colonies: readonly number[]): SheetDraft {
  const typed: Record<string, TypedRow> = {};
  for (const [colony, row] of Object.entries(now.typed)) {
    const gone = colonies.includes(Number(colony)) ? sent[colony] : undefined;
    const left = Object.fromEntries(columnKeys.filter((key) => row[key] !== undefined && row[key] !== gone?.[key]).map((key) => [key, row[key]]));
    if (!rowIsEmpty(left)) typed[colony] = left;
  }
  return { ...now, typed, kept: [] };
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
  const { sample, method } = found['wide'];
  if (typeof sample !== 'string' || (method !== '' && method !== 'alcohol wash' && method !== 'sugar roll')) return null;
  const typed: Record<string, TypedRow> = {};
  for (const [colony, row] of Object.entries(found['typed'])) {
    if (!isRecord(row)) return null;
    const cells: TypedRow = {};
    for (const key of columnKeys) if (typeof row[key] === 'string') cells[key] = row[key];
    typed[colony] = cells;
  }
  return { typed, wide: { sample, method }, labels: textRecord(found['labels']), kept: textList(found['kept']) };
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
