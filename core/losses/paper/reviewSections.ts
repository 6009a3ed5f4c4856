import type { CurveSet, LossReview, LossRow } from '#shared/contract/losses.ts';
import type { PaperColumn, PaperSection, PaperTable } from '#shared/contract/paper.ts';
import { addDays, type Day } from '#shared/days.ts';
import { periodDays, seasonName, type Period } from '#shared/seasons.ts';
import type { ReviewFacts } from '../reviewFacts.ts';
import { drawCurve } from './drawCurve.ts';
import { drawIntervals } from './drawIntervals.ts';

/** What a section may be made from. */
export interface SectionFacts {
  readonly review: LossReview;
  readonly facts: ReviewFacts;
}

/** A part of the review on paper; null where there is nothing to say. */
export type SectionMaker = (facts: SectionFacts) => PaperSection | null;

/** The review's parts in the order in which they are printed; each is printed, put into the file, and its tables saved as CSV. */
export const reviewSections: readonly SectionMaker[] = [
  rateSection('winter'),
  rateSection('summer'),
  rateSection('year'),
  pastSection,
  octoberSection,
  startSection,
  ledgerSection,
  endedSection,
];

const text = (label: string): PaperColumn => ({ label, unit: 'text' });
const count = (label: string): PaperColumn => ({ label, unit: 'count' });
const share = (label: string): PaperColumn => ({ label, unit: 'share' });

const periodWords: Readonly<Record<Period, string>> = { winter: 'Winter loss', summer: 'Summer loss', year: 'Loss over the year' };
const rateColumns = [count('At risk'), count('Lost'), share('Rate'), share('95 % range from'), share('to'), text('Range')];
const unitedNote = { lost: 'United colonies count as lost, the rule of the national loss surveys.', takenOut: 'United colonies are taken out of the base.' } as const;
const rangeNote = 'Ranges: Wilson’s 95 % for a yard; for all yards together the quasi-binomial one, which lets yards share their fate, where there are at least three.';
const source = 'Total loss after vanEngelsdorp and others 2013, J Apic Res 52(4).';

/** The range shown beside a rate and what it is, as on the screen. */
function rangeOf(row: LossRow): { interval: [number, number] | null; kind: string } {
  if (row.quasi !== null && row.quasi.units >= 3) return { interval: [row.quasi.lower, row.quasi.upper], kind: 'across yards' };
  return { interval: row.wilson, kind: row.wilson === null ? '' : 'Wilson' };
}

function rateCells(row: LossRow) {
  const { interval, kind } = rangeOf(row);
  return [row.atRisk, row.atRisk === 0 ? null : row.lost, row.rate, interval?.[0] ?? null, interval?.[1] ?? null, kind];
}

function lineOf(row: LossRow, label: string, all: boolean) {
  return { label, counts: `${row.lost} of ${row.atRisk}`, rate: row.rate, interval: rangeOf(row).interval, all };
}

function rateSection(period: Period): SectionMaker {
  return ({ review }) => {
    const rows = review.rates.filter((row) => row.season === review.season && row.period === period);
    const all = rows.find(({ group }) => group === 'all');
    if (all === undefined || all.atRisk === 0) return null;
    const yards = rows.filter(({ group }) => group !== 'all');
    const name = (row: LossRow) => (row.group === 'all' ? 'All yards' : (review.yards.find(({ code }) => code === row.group)?.name ?? row.group));
    const title = `${periodWords[period]} by yard, ${seasonName(review.season)}${all.complete ? '' : ', so far'}`;
    const { average } = all;
    return {
      key: `rates-${period}`, title,
      sentences: period === 'winter' ? review.sentences : [],
      drawings: [drawIntervals(title, [...yards, all].map((row) => lineOf(row, name(row), row === all)))],
      tables: [{ key: `loss-${period}`, title, columns: [text('Yard'), ...rateColumns], rows: [...yards, all].map((row) => [name(row), ...rateCells(row)]), totals: true, onPaper: true }],
      notes: [
        ...(average === null ? [] : [`Mean of ${average.units} ${average.units === 1 ? 'yard' : 'yards'}, each weighing the same: ${inPercent(average.mean)}, middle one ${inPercent(average.median)}.`]),
        ...(all.quasiWhy === null ? [] : [`All yards with Wilson’s range. ${all.quasiWhy}`]),
        ...(period === 'year' ? [`${unitedNote[review.united]} ${rangeNote} ${source}`] : []),
      ],
    };
  };
}

function pastSection({ review }: SectionFacts): PaperSection | null {
  const rows = review.rates.filter(({ group, atRisk }) => group === 'all' && atRisk > 0);
  const winters = rows.filter(({ period }) => period === 'winter').toSorted((a, b) => a.season - b.season);
  if (rows.length === 0) return null;
  const title = 'Season by season, all yards';
  const name = (row: LossRow) => `${seasonName(row.season)}${row.complete ? '' : ', so far'}`;
  return {
    key: 'past', title, sentences: [],
    drawings: winters.length < 2 ? [] : [drawIntervals('Winter loss, season by season', winters.map((row) => lineOf(row, name(row), false)))],
    tables: [{
      key: 'seasons', title, columns: [text('Season'), text('Period'), ...rateColumns], totals: false, onPaper: true,
      rows: rows.toSorted((a, b) => b.season - a.season || a.period.localeCompare(b.period)).map((row) => [name(row), row.period, ...rateCells(row)]),
    }],
    notes: ['The year is counted by itself; summer and winter rates are never added up.'],
  };
}

function octoberSection({ review, facts: { borders } }: SectionFacts): PaperSection | null {
  const { from } = periodDays(review.season, 'winter', borders);
  return survivalSection('survival-winter', `When they died: ${review.sinceOctober.axis}`, review.sinceOctober, from);
}

function startSection({ review }: SectionFacts): PaperSection | null {
  return survivalSection('survival-age', `When they died: ${review.sinceStart.axis}`, review.sinceStart, null);
}

function survivalSection(key: string, title: string, set: CurveSet, origin: Day | null): PaperSection | null {
  if (set.all.colonies === 0) return null;
  const all = { name: 'All yards', curve: set.all };
  const yards = set.byYard.map(({ yardName, curve }) => ({ name: yardName, curve }));
  // Beside all yards the two with the fewest left alive, among those with enough colonies to draw.
  const drawn = yards.filter(({ curve }) => curve.colonies >= 5 && curve.losses > 0).toSorted((a, b) => (a.curve.survival.at(-1) ?? 1) - (b.curve.survival.at(-1) ?? 1)).slice(0, 2);
  const table: PaperTable = {
    key, title, totals: false, onPaper: false,
    columns: [text('Yard'), { label: 'Days', unit: 'number' }, ...(origin === null ? [] : [{ label: 'Day', unit: 'day' as const }]), count('At risk'), count('Lost'), share('Alive'), share('95 % range from'), share('to')],
    rows: [all, ...yards].flatMap(({ name, curve }) =>
      curve.times.map((time, at) => [
        name, time, ...(origin === null ? [] : [addDays(origin, Math.floor(time))]), curve.atRisk[at] ?? null, curve.lost[at] ?? null, curve.survival[at] ?? null, curve.low[at] ?? null, curve.high[at] ?? null,
      ])),
  };
  return {
    key, title,
    sentences: set.sentence === '' ? [] : [set.sentence],
    drawings: [drawCurve(title, [all, ...(yards.length > 1 ? drawn : [])], origin)],
    tables: [table],
    notes: ['Kaplan-Meier; colonies that came later enter on their day, a tick is a day on which one left alive; the shade is the 95 % band (log-log) of all yards.'],
  };
}

const ledgerColumns = [
  ['opening', 'Start'], ['packages', 'Packages'], ['nucs', 'Nucs'], ['swarms', 'Swarms'], ['splits', 'Splits'], ['boughtColonies', 'Full colonies'], ['movedIn', 'Moved in'], ['movedOut', 'Moved out'],
  ['sold', 'Sold'], ['given', 'Given'], ['combined', 'United'], ['absconded', 'Absconded'], ['lostSummer', 'Lost, summer'], ['lostWinter', 'Lost, winter'], ['closing', 'End'],
] as const;

function ledgerSection({ review }: SectionFacts): PaperSection | null {
  const running = review.seasons.find(({ season }) => season === review.season)?.complete === false;
  const title = `The season’s account, ${seasonName(review.season)}${running ? ', so far' : ''}`;
  if (review.seasons.length === 0) return null;
  return {
    key: 'ledger', title, sentences: review.balances ? [] : ['The account does not balance. No record is lost; check the book and keep a copy of it.'], drawings: [],
    tables: [{
      key: 'account', title, columns: [text('Yard'), ...ledgerColumns.map(([, label]) => count(label))], totals: true, onPaper: true,
      rows: review.ledger.map((row) => [row.yard === 'all' ? 'All yards' : row.yard, ...ledgerColumns.map(([column]) => row[column])]),
    }],
    notes: [`${review.yards.map(({ code, name }) => `${code} ${name}`).join(', ')}. Start and what came, less what went, is the end, yard by yard.`],
  };
}

function endedSection({ review }: SectionFacts): PaperSection | null {
  const title = `Colonies that ended, ${seasonName(review.season)}`;
  if (review.ended.length === 0) return null;
  const how = { alive: 'alive', lost: 'lost', sold: 'sold', given: 'given away', combined: 'united', absconded: 'absconded' } as const;
  return {
    key: 'ended', title, sentences: [], drawings: [], notes: ['Causes are what was seen or believed; several may stand together.'],
    tables: [{
      key: 'ended', title, columns: [{ label: 'Day', unit: 'day' }, text('Colony'), text('Yard'), text('How'), text('Cause')], totals: false, onPaper: true,
      rows: review.ended.toSorted((a, b) => a.day.localeCompare(b.day) || a.label.localeCompare(b.label)).map((one) => [one.day, one.label, review.yards.find(({ code }) => code === one.yard)?.name ?? one.yard, how[one.how], one.causes.join('; ') || null]),
    }],
  };
}

function inPercent(rate: number): string {
  return `${Math.round(rate * 100)} %`;
}
