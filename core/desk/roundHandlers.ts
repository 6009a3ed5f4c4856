import { addDays, yearOf } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { marksFrom, markTrouble, standardMarks, type MarkMeaning } from '#shared/roundMarks.ts';
import { inSheetOrder } from '#shared/roundSheets.ts';
import { queenOn } from '#core/lineage/colonyWords.ts';
import { cuesFor, foundLast } from '#core/lineage/fieldCues.ts';
import { sheetColonies } from '#core/lineage/sheetColonies.ts';
import type { Handlers } from './desk.ts';
import { layoutOf, layoutPaper, marksKey, marksPaper, roundSettingOf, seasonHere, type Layout } from './roundSettingOf.ts';
import { standingIn } from './standing.ts';

/** Longest time that a split, or a treatment of the whole yard, says something about a colony on the field sheet. */
const looksBack = 120;

export const roundHandlers: Handlers<'rounds.setting' | 'rounds.layout' | 'rounds.marks' | 'rounds.paper'> = {
  'rounds.setting': ({ yard, day }, context) => roundSettingOf(context, yard, day),
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
    await book.store.keepPapers([{ kind: layoutPaper, key: String(yard), body: JSON.stringify({ kind, on: day, seasons } satisfies Layout) }]);
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
    const recent = await standingIn(store, { kinds: ['split', 'treatment'], from: addDays(day, -looksBack), until: day });
    const here = sheetColonies(states, stands, id, day);
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

function unknownYard(): FaultError {
  return new FaultError(refuse('unknown', 'That yard is not in this book.'));
}
