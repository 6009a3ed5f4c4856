import type { LossRow } from '#shared/contract/losses.ts';
import type { CountedRate, LossRates } from '#shared/contract/lossSections.ts';
import type { PaperCell, PaperPart } from '#shared/contract/paper.ts';
import { missing, number, percent, percentRange, rate, signed } from '#shared/figures.ts';
import { publishedLines, publishedSpan, rangeOf, ratesOf, pastRates, type PublishedLine } from '#shared/lossChoice.ts';
import { seasonName, type Period } from '#shared/seasons.ts';
import { drawable, drawRates, type IntervalLine } from './drawIntervals.ts';
import { figure, inFile, part, rateCells, rateColumns, table, text } from './paperTables.ts';
import type { SectionMaker } from './sectionFacts.ts';

const periods = ['winter', 'summer', 'year'] as const;
const rateHeads: Readonly<Record<Period, string>> = { winter: 'Winter loss by yard', summer: 'Summer loss by yard', year: 'Loss over the year by yard' };
const pastHeads: Readonly<Record<Period, string>> = { winter: 'Your winters', summer: 'Your summers', year: 'Your years' };
const turnover: Readonly<Record<Period, string>> = { winter: 'Winter, US survey rule', summer: 'Summer, US survey rule', year: 'Whole year, US survey rule' };
const kinds = { dead: 'dead or empty', queen: 'queen problem', disaster: 'natural disaster' } as const;
const unitedNote = { lost: 'United colonies count as lost, the rule of the national loss surveys.', takenOut: 'United colonies are taken out of the base.' } as const;
const soFar = (complete: boolean) => (complete ? '' : ', so far');

/** Section 2: loss by both definitions, by yard, beside the person's own other seasons and the published surveys. */
export const rateParts: SectionMaker = ({ answers, season, united }) => {
  const review = answers.rates(season, united);
  return [...definitions(review), ...periods.flatMap((period) => byYard(review, period)), ...periods.flatMap((period) => past(review, period)), published(review)];
};

/** Which interval stands beside a rate. */
function kindOfRange(row: LossRow): string {
  const range = rangeOf(row);
  if (range === null) return '';
  return range === row.wilson ? 'Wilson' : range === row.clopperPearson ? 'Clopper-Pearson' : 'across yards';
}

const methods: Readonly<Record<CountedRate['method'], string>> = { none: '', wilson: 'Wilson', 'clopper-pearson': 'Clopper-Pearson', 'quasi-binomial': 'across yards' };

function turnoverCells(row: LossRow): PaperCell[] {
  return [...rateCells({ ...row, range: rangeOf(row) }), kindOfRange(row)];
}

function lineOf(row: LossRow, label: string, all = false): IntervalLine {
  return { label, counts: rate(row.lost, row.atRisk, rangeOf(row)), rate: row.rate, interval: rangeOf(row), all };
}

function definitions(review: LossRates): PaperPart[] {
  const title = 'Loss by the two published definitions';
  const meanCells = (mean: { mean: number; range: readonly [number, number] | null } | null): PaperCell[] =>
    mean === null ? [missing, null, null, null] : [`${percent(mean.mean)}  ${percentRange(mean.range)}`.trimEnd(), mean.mean, mean.range?.[0] ?? null, mean.range?.[1] ?? null];
  const rows = periods.flatMap((period) => {
    const { all } = ratesOf(review, period);
    return all === undefined ? [] : [[`${turnover[period]}${soFar(all.complete)}`, ...turnoverCells(all), ...meanCells(all.average === null ? null : { mean: all.average.mean, range: all.average.ci })]];
  });
  const own = review.cohorts.find(({ season }) => season === review.season);
  if (own !== undefined) {
    const { total, average, parts } = own.loss;
    rows.splice(1, 0,
      [`Winter, COLOSS rule${soFar(own.complete)}`, ...rateCells(total), methods[total.method], ...meanCells(average)],
      ...parts.map(({ part: kind, rate: one }) => [`of these ${kinds[kind]}`, ...rateCells(one), methods[one.method], '', null, null, null]));
  }
  if (rows.length === 0) return review.sentences.length === 0 ? [] : [part('rates', '', { sentences: review.sentences })];
  return [part('definitions', title, {
    sentences: review.sentences,
    tables: [table('definitions', title, {
      columns: [text('Counted as'), ...rateColumns('Lost, with its 95 % range'), inFile('Range is', 'text'), figure('Mean of yards'), inFile('Mean of yards', 'share'), inFile('Mean from', 'share'), inFile('Mean to', 'share')], rows,
    })],
    notes: [
      ...(own === undefined ? [] : [leftAlive(own.loss)]),
      'US survey rule: at risk are the colonies at the start and all that were split off, bought or caught, less those sold or given away; lost is what of them is no longer there at the end. COLOSS rule: of the colonies wintered, each followed by itself, those that died or stood empty, had a queen problem that could not be mended, or were taken by a natural disaster.',
      `${unitedNote[review.united]} Ranges: Wilson’s 95 % for a yard, the exact one where none or all were lost; for all yards together one that lets yards share their fate (quasi-binomial), where there are at least three. Total loss after vanEngelsdorp and others 2013, J Apic Res 52(4).`,
    ],
  })];
}

function leftAlive({ sold, given, united, came }: LossRates['cohorts'][number]['loss']): string {
  const left = [sold > 0 ? `${sold} sold` : '', given > 0 ? `${given} given away` : '', united > 0 ? `${united} united` : ''].filter((one) => one !== '').join(', ');
  const gone = left === '' ? 'None of the wintered colonies was sold, given away or united during the winter.' : `Left the wintered colonies alive during the winter: ${left}. The COLOSS rule counts them as not lost.`;
  return came === 0 ? gone : `${gone} ${came === 1 ? 'One colony' : `${came} colonies`} came during the winter and ${came === 1 ? 'is' : 'are'} not counted by it.`;
}

function byYard(review: LossRates, period: Period): PaperPart[] {
  const { yards, all } = ratesOf(review, period);
  if (all === undefined || all.atRisk === 0) return [];
  const name = (row: LossRow) => (row === all ? 'All yards' : (review.yards.find(({ code }) => code === row.group)?.name ?? row.group));
  const title = `${rateHeads[period]}, ${seasonName(review.season)}${soFar(all.complete)}`;
  const { average } = all;
  const rows = [...yards, all];
  return [part(`rates-${period}`, title, {
    drawings: drawRates(title, rows.map((row) => lineOf(row, name(row), row === all))),
    tables: [table(`loss-${period}`, title, { columns: [text('Yard'), ...rateColumns('Lost, with its 95 % range'), inFile('Range is', 'text')], rows: rows.map((row) => [name(row), ...turnoverCells(row)]), totals: true, onPaper: !drawable(rows) })],
    notes: [
      ...(average === null || average.units < 2 ? [] : [`Mean of ${average.units} yards, each weighing the same: ${percent(average.mean)}${average.ci === null ? '' : ` ${percentRange(average.ci)}`}, middle one ${percent(average.median)}.`]),
      ...(all.quasiWhy === null ? [] : [all.quasiWhy]),
    ],
  })];
}

function past(review: LossRates, period: Period): PaperPart[] {
  const rows = pastRates(review, period);
  // One season alone stands above already.
  if (rows.length < 2) return [];
  const name = (row: LossRow) => `${seasonName(row.season)}${soFar(row.complete)}`;
  const less = review.differences.some((one) => one.period === period);
  const title = `${pastHeads[period]}, all yards`;
  return [part(`past-${period}`, title, {
    tables: [table(`seasons-${period}`, title, {
      columns: [text('Season'), ...rateColumns('Lost, with its 95 % range'), inFile('Range is', 'text'), ...(less ? [figure('This season less it')] : []), inFile('Difference', 'share'), inFile('Difference from', 'share'), inFile('Difference to', 'share')],
      rows: rows.map((row) => {
        const found = review.differences.find((one) => one.season === row.season && one.period === period);
        const said = row.season === review.season ? 'this one' : found === undefined ? missing : `${signed(found.value * 100)} (${signed(found.range[0] * 100)} to ${signed(found.range[1] * 100)})`;
        return [name(row), ...turnoverCells(row), ...(less ? [said] : []), found?.value ?? null, found?.range[0] ?? null, found?.range[1] ?? null];
      }),
    })],
    notes: period === 'year' ? ['The year is counted by itself; summer and winter rates are never added up. Differences of rates, in colonies of a hundred, with Newcombe’s 95 % range: one on both sides of nought may be chance.'] : [],
  })];
}

function published(review: LossRates): PaperPart {
  const title = 'Beside the published surveys';
  const span = (survey: 'us' | 'coloss') => {
    const found = publishedSpan(review.published, survey);
    return found === null ? null : `${number(found[0] * 100)} to ${number(found[1] * 100)}`;
  };
  const [us, coloss] = [span('us'), span('coloss')];
  const said = [us === null ? '' : `${us} in 100 in the United States`, coloss === null ? '' : `${coloss} in Europe and partner countries`].filter((one) => one !== '').join(', ');
  const lines = publishedLines(review.published);
  const own = ({ season, what }: PublishedLine) => (what === 'average' ? undefined : review.rates.find((one) => one.group === 'all' && one.period === 'winter' && one.season === season && one.complete));
  return part('published', title, {
    sentences: [`The winters listed here ran from ${said}. They are other people’s colonies in other climates, counted by many hands: they tell what is common, not what yours should be.`],
    tables: [table('published', title, {
      columns: [
        text('Season'), text('Survey'),
        ...['Winter', 'Summer', 'Year'].flatMap((head) => [figure(`${head} %`), inFile(head, 'share'), inFile(`${head} from`, 'share'), inFile(`${head} to`, 'share')]),
        ...rateColumns('Yours, winter', 'Yours, winter:'), inFile('Source', 'text'),
      ],
      rows: lines.map((line) => {
        const row = own(line);
        return [
          seasonName(line.season), `${line.place}${line.what === 'average' ? ', average of operations' : ''}`,
          ...periods.flatMap((period) => {
            const found = line.rates[period];
            return [found === undefined ? missing : `${number(found.rate * 100, 1)}${found.rangeIs === 'interval' ? ` ${percentRange(found.range, 1)}` : ''}`, found?.rate ?? null, found?.range?.[0] ?? null, found?.range?.[1] ?? null];
          }),
          ...(row === undefined ? [line.what === 'average' ? '' : missing, null, null, null, null, null] : rateCells({ ...row, range: rangeOf(row) })),
          line.sources.join('; '),
        ];
      }),
    })],
    notes: [
      'Total loss: all lost of all at risk, as the surveys print it; it follows the large operations. The average gives every operation the same weight. Only figures that could be read in the source named are listed, so winters are missing.',
      `Read in: ${[...new Set(lines.flatMap(({ sources }) => sources))].join('; ')}.`,
    ],
  });
}
