import { rate } from '#shared/figures.ts';
import { drawable, drawRates } from './drawIntervals.ts';
import { count, figure, inFile, part, table, text } from './paperTables.ts';
import type { SectionMaker } from './sectionFacts.ts';

/** Section 5: the causes that were written down, as shares of all that were lost, and by yard. */
export const causeParts: SectionMaker = ({ answers, season }) => {
  const { lost, sentence, shares, byYard } = answers.factors(season, 'season').causes;
  const title = 'Causes, shares of all lost';
  const first = part('causes', '', {
    sentences: [sentence],
    drawings: drawRates(title, shares.map((one) => ({ label: one.cause, counts: rate(one.count, one.of, one.range), rate: one.share, interval: one.range, all: false })), '% of lost'),
    tables: lost === 0 ? [] : [table('causes', title, {
      columns: [text('Cause'), figure('Named for, with its 95 % range'), inFile('Named for', 'count'), inFile('Lost', 'count'), inFile('Share', 'share'), inFile('95 % range from', 'share'), inFile('95 % range to', 'share')],
      rows: shares.map((one) => [one.cause, rate(one.count, one.of, one.range), one.count, one.of, one.share, one.range[0], one.range[1]]),
      onPaper: !drawable(shares),
    })],
    notes: lost === 0 ? [] : ['A cause is what was written down when the dead hive was opened: an opinion. A colony may have several. The unknown stay in the base.'],
  });
  if (byYard.rows.length === 0) return [first];
  const yards = 'Causes by yard, each colony once';
  return [first, part('causes-by-yard', yards, {
    sentences: [byYard.sentence],
    tables: byYard.rows.length < 2 ? [] : [table('causes-by-yard', yards, { columns: [text('Yard'), ...byYard.causes.map(count)], rows: byYard.rows.map(({ name, counts }) => [name, ...counts]) })],
  })];
};
