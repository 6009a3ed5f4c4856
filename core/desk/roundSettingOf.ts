import { z } from 'zod';
import { roundMarks, type RoundSetting } from '#shared/contract/rounds.ts';
import type { PlannedSheet } from '#shared/contract/trips.ts';
import type { PlannedTask } from '#shared/contract/work.ts';
import { dayValue } from '#shared/contract/values.ts';
import type { YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { marksFrom, markTrouble } from '#shared/roundMarks.ts';
import { roundColumns, roundKinds, standardColumns, type RoundColumn, type RoundKind } from '#shared/roundSheets.ts';
import { seasonOf } from '#shared/seasons.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';
import { visitSheet, yardWorkOf } from '#core/work/taskSheets.ts';
import type { DeskContext } from './desk.ts';
import type { Book } from './openBook.ts';
import { planOfDay } from './planOfDay.ts';

export const layoutPaper = 'round layout';
export const marksPaper = 'round marks';
export const marksKey = 'all yards';

/** What one yard's rounds ask, season by season. */
const layout = z.object({
  kind: z.enum(roundKinds),
  /** The day whose sheet was chosen last. */
  on: dayValue.optional(),
  seasons: z.record(z.string().regex(/^\d{4}$/), z.partialRecord(z.enum(roundKinds), z.array(z.enum(roundColumns)).min(1))),
});
export type Layout = z.infer<typeof layout>;

/** What a yard’s round asks on a day. Where work is planned there that day its sheet is taken, unless another was chosen for that very day. */
export async function roundSettingOf(context: DeskContext, yard: YardId, day: Day): Promise<RoundSetting> {
  const book = context.open();
  const season = await seasonHere(book, day);
  const kept = await layoutOf(book, yard);
  const marks = read(roundMarks, (await book.store.papers(marksPaper)).get(marksKey)) ?? {};
  const columns = Object.fromEntries(roundKinds.map((kind) => [kind, columnsOf(kept, season, kind)])) as RoundSetting['columns'];
  const chosen = kept?.on === day ? kept.kind : null;
  const tasks = await plannedTasks(context, yard, day);
  const planned = plannedHere(tasks, day, (await book.picture()).rules, columns, chosen);
  return {
    season, kind: chosen ?? planned?.kind ?? kept?.kind ?? 'inspection', columns, planned,
    marks: markTrouble(marksFrom(marks)) === null ? marks : {},
    yardWork: tasks.flatMap(({ key, what }) => {
      const task = yardWorkOf(key);
      return task === null ? [] : [{ what, task }];
    }),
    massUnit: (await book.settings()).massUnit,
  };
}

async function plannedTasks(context: DeskContext, yard: YardId, day: Day): Promise<PlannedTask[]> {
  const { plan } = await planOfDay(context, day);
  return (plan?.outings ?? []).filter((outing) => outing.day === day).flatMap(({ visits }) => visits.filter((visit) => visit.yard === yard).flatMap(({ tasks }) => tasks));
}

function plannedHere(tasks: readonly PlannedTask[], day: Day, rules: RuleValues, columns: RoundSetting['columns'], chosen: RoundKind | null): PlannedSheet | null {
  const sheet = visitSheet(tasks, day, rules);
  if (sheet === null) return null;
  const kind = chosen ?? sheet.kind;
  return { kind, works: sheet.works.map((work) => ({ kind: work.kind, what: [...work.what], columns: work.columns.filter((column) => !columns[kind].includes(column)) })) };
}

export async function seasonHere(book: Book, day: Day): Promise<number> {
  return seasonOf(day, (await book.picture()).borders);
}

export async function layoutOf(book: Book, yard: number): Promise<Layout | null> {
  return read(layout, (await book.store.papers(layoutPaper)).get(String(yard)));
}

function columnsOf(kept: Layout | null, season: number, kind: RoundKind): RoundColumn[] {
  const seasons = Object.keys(kept?.seasons ?? {}).map(Number).filter((one) => one <= season).toSorted((a, b) => b - a);
  for (const one of seasons) {
    const columns = kept?.seasons[String(one)]?.[kind];
    if (columns !== undefined) return columns;
  }
  return [...standardColumns[kind]];
}

/** A paper that this program did not write is passed over. */
function read<Schema extends z.ZodType>(schema: Schema, body: string | undefined): z.output<Schema> | null {
  if (body === undefined) return null;
  try {
    const parsed = schema.safeParse(JSON.parse(body));
    return parsed.success ? parsed.data : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

