import { z } from 'zod';
import type { RoundSetting } from '#shared/contract/rounds.ts';
import { roundMarks } from '#shared/contract/rounds.ts';
import { addDays, yearOf, type Day } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { marksFrom, markTrouble, standardMarks, type MarkMeaning } from '#shared/roundMarks.ts';
import { inSheetOrder, roundColumns, roundKinds, standardColumns, type RoundColumn, type RoundKind } from '#shared/roundSheets.ts';
import { seasonOf } from '#shared/seasons.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { queenOn } from '#core/lineage/colonyWords.ts';
import { cuesFor, foundLast } from '#core/lineage/fieldCues.ts';
import { byStand } from '#core/lineage/standOrder.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import type { Handlers } from './desk.ts';
import type { Book } from './openBook.ts';

const layoutPaper = 'round layout';
const marksPaper = 'round marks';
const marksKey = 'all yards';

/** What one yard's rounds ask, season by season. */
const layout = z.object({
  kind: z.enum(roundKinds),
  seasons: z.record(z.string().regex(/^\d{4}$/), z.partialRecord(z.enum(roundKinds), z.array(z.enum(roundColumns)).min(1))),
});
type Layout = z.infer<typeof layout>;

/** Longest time that a split, or a treatment of the whole yard, says something about a colony on the field sheet. */
const looksBack = 120;

export const roundHandlers: Handlers<'rounds.setting' | 'rounds.layout' | 'rounds.marks' | 'rounds.paper'> = {
  'rounds.setting': async ({ yard, day }, context) => {
    const book = context.open();
    const season = await seasonHere(book, day);
    const kept = await layoutOf(book, yard);
    const marks = read(roundMarks, (await book.store.papers(marksPaper)).get(marksKey)) ?? {};
    return {
      season,
      kind: kept?.kind ?? 'inspection',
      columns: Object.fromEntries(roundKinds.map((kind) => [kind, columnsOf(kept, season, kind)])) as RoundSetting['columns'],
      marks: markTrouble(marksFrom(marks)) === null ? marks : {},
      massUnit: (await book.settings()).massUnit,
    };
  },
  'rounds.layout': async ({ yard, day, kind, columns }, context) => {
    const book = context.open();
    const { yardList } = await book.picture();
    if (!yardList.some((one) => one.id === yard)) throw unknownYard();
    const kept = await layoutOf(book, yard);
    const season = String(await seasonHere(book, day));
    const seasons = { ...kept?.seasons };
    if (columns === null) {
      // In every season, or the choice of an earlier one would come back in its place.
      for (const [name, { [kind]: _, ...others }] of Object.entries(seasons)) seasons[name] = others;
    } else if (columns !== undefined) seasons[season] = { ...seasons[season], [kind]: inSheetOrder(columns) };
    await book.store.keepPapers([{ kind: layoutPaper, key: String(yard), body: JSON.stringify({ kind, seasons } satisfies Layout) }]);
    return {};
  },
  'rounds.marks': async ({ marks }, context) => {
    const book = context.open();
    const all = marksFrom(marks);
    const trouble = markTrouble(all);
    if (trouble !== null) throw new FaultError(refuse('refused', trouble.sentence, { field: trouble.meaning, mend: 'The marks are as they were.' }));
    const changed = Object.entries(all).filter(([meaning, mark]) => standardMarks[meaning as MarkMeaning] !== mark);
    await book.store.keepPapers([{ kind: marksPaper, key: marksKey, body: changed.length === 0 ? null : JSON.stringify(Object.fromEntries(changed)) }]);
    return {};
  },
  'rounds.paper': async ({ yard: id, day }, context) => {
    const { store } = context.open();
    const { states, yardList, stands, rules } = await context.open().picture();
    const yard = yardList.find((one) => one.id === id);
    if (yard === undefined) throw unknownYard();
    const recent = (await store.entries({ kinds: ['split', 'treatment'], from: addDays(day, -looksBack), until: day })).filter(({ struck }) => struck === null).map(({ entry }) => entry);
    const here = states.filter((state) => aliveOn(state, day) && yardOn(state, day) === id).toSorted(byStand(stands.get(id) ?? []));
    return {
      yard: { id: yard.id, code: yard.code, name: yard.name },
      day,
      rows: here.map((state) => {
        const queen = queenOn(state, day);
        return {
          colony: state.id,
          label: state.label,
          queen,
          queenAge: queen?.year == null ? null : yearOf(day) - queen.year,
          last: foundLast(state, day),
          cues: cuesFor(state, day, rules, recent),
        };
      }),
    };
  },
};

async function seasonHere(book: Book, day: Day): Promise<number> {
  return seasonOf(day, (await book.picture()).borders);
}

async function layoutOf(book: Book, yard: number): Promise<Layout | null> {
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

function unknownYard(): FaultError {
  return new FaultError(refuse('unknown', 'That yard is not in this book.'));
}
