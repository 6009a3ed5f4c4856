import type { MonthAhead } from '#shared/contract/worked.ts';
import { counted, fixed } from '../../parts/format.ts';

const h = (hours: number) => fixed(hours, hours < 10 ? 1 : 0);

/** What the page of the hours worked says. */
export const workedWords = {
  title: 'Hours worked',
  line: 'What the bees took of your time, by season and yard, against the plan, and what the season to come would take.',
  loading: 'Reading the hours…',
  none: 'Here will be your hours: type them with a round, as 17:30-20, or enter a record of work done.',
  toRound: 'Enter a round',
  season: 'Season',
  table: (season: string) => `Hours worked in ${season}`,
  yard: 'Yard',
  home: 'At home, or of no yard',
  all: 'All',
  visits: 'Visits',
  written: 'with hours',
  of: (written: number, visits: number) => `${written} of ${visits}`,
  hours: 'Hours written',
  estimate: 'Hours in all',
  estimateOf: (hours: number, low: number, high: number) => (low === high ? h(hours) : `${h(hours)} (${h(low)}–${h(high)})`),
  ranged: (value: number, low: number, high: number) => (low === high ? fixed(value, 1) : `${fixed(value, 1)} (${fixed(low, 1)}–${fixed(high, 1)})`),
  miles: 'Miles',
  colonies: 'Colonies',
  perColony: 'Hours a colony',
  perHour: (unit: string) => `Honey, ${unit} an hour`,
  sentence: (hours: string, visits: number, written: number, perColony: string) =>
    `${hours} person-hours in ${counted(visits, 'visit', 'visits')}; ${perColony} for each colony.${written < visits ? ` ${counted(visits - written, 'visit has', 'visits have')} no hours written down and are reckoned like the others of their yard.` : ''}`,
  sentenceFew: (hours: string, visits: number, written: number) => `${hours} person-hours written down for ${written} of ${counted(visits, 'visit', 'visits')}: too few to say what the others took.`,
  busiest: 'Busiest weeks',
  busiestNone: 'No week has hours written down.',
  busyWeek: (hours: number, visits: number, without: number) => `${h(hours)} h in ${counted(visits, 'visit', 'visits')}${without === 0 ? '' : `, ${without} more without hours`}`,
  planned: 'Planned and worked',
  plannedNone: 'No visit of a kept plan is over yet. Keep a plan, type the hours with each round, and they stand side by side here.',
  plannedSum: (visits: number, planned: string, worked: string, share: string) => `${counted(visits, 'visit', 'visits')} with both: ${planned} planned, ${worked} worked, ${share} of the plan.`,
  day: 'Day',
  plan: 'Planned',
  work: 'Worked',
  notGone: 'nothing entered',
  noHours: 'went; no hours',
  ahead: (season: string) => `The season to come, ${season}`,
  colonyCount: 'Colonies to keep',
  aheadLine: (colonies: number, living: number) => `What ${counted(colonies, 'colony', 'colonies')} would take month by month, by your past seasons, against the hours there are. You have ${living} now.`,
  aheadHouse: 'The hours there are, are the program’s own pattern until you write yours down.',
  aheadNone: 'No season with hours enough is over yet, so nothing can be said of the next.',
  aheadSays,
  month: 'Month',
  need: 'Hours needed',
  needRange: (low: number, high: number) => `(${h(low)}–${h(high)})`,
  seasons: 'Seasons',
  driving: 'Driving',
  have: 'Hours there are',
  verdict: 'Fits?',
  fits: { fits: 'fits', open: 'may not', short: 'does not fit', unknown: 'not known' } satisfies Record<MonthAhead['fits'], string>,
  fitsAsThen: (fits: boolean) => (fits ? 'fits, if as then' : 'does not, if as then'),
  monthName,
  marginHours: 'Person-hours',
  marginHoursText: 'Hours by the clock times people. A visit is a yard on a day of which something was entered; work at home counts by days.',
  marginEstimate: 'Hours in all',
  marginEstimateText: 'Visits without hours are reckoned as the mean of those with hours; the range (95 %) tells how far off that can be. Below 5 visits with hours nothing is reckoned.',
  marginAhead: 'The season to come',
  marginAheadText: 'For each month, the hours for each colony alive in that month of past seasons, times the colonies you choose. The range is that of one more such season (95 %). Driving is as it was. Hours there are: the weekly pattern by daylight, less taken days. It says “fits” only if the upper end fits, and “does not fit” only if the lower end does not. One or two seasons cannot tell how far seasons differ, so with those it says only how it was.',
} as const;

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

function monthName(month: string): string {
  return months[Number(month.slice(5)) - 1] ?? month;
}

/** Fewer seasons than this cannot tell how far one differs from another: the range from two is wider than any year. */
const leastSeasons = 3;

export function isFew({ need }: Pick<MonthAhead, 'need'>): boolean {
  return need !== null && need.seasons < leastSeasons;
}

/** Whether a month as it was then has place in the hours there are. */
export function fitsAsThen({ need, driving, have }: Pick<MonthAhead, 'need' | 'driving' | 'have'>): boolean {
  return need !== null && need.hours + driving <= have;
}

/** One sentence on which months fit; where there are few past seasons, on how it was then, and what that cannot tell. */
export function aheadSays(all: readonly Pick<MonthAhead, 'month' | 'need' | 'driving' | 'have' | 'fits'>[]): string {
  const names = (own: typeof all) => listed(own.map(({ month }) => monthName(month)));
  const few = all.filter(isFew);
  const [more, unknown] = [all.filter((one) => one.need !== null && !isFew(one)), all.filter(({ need }) => need === null)];
  const nothing = unknown.length === 0 || few.length + more.length === 0 ? '' : ` Of ${names(unknown)} no past season tells.`;
  if (more.length === 0) {
    const not = few.filter((one) => !fitsAsThen(one));
    const then = not.length === 0 ? 'it fits in every month' : not.length === few.length ? 'it fits in no month' : `it does not fit in ${names(not)}, and fits in the other months`;
    const one = few.every(({ need }) => need?.seasons === 1);
    return few.length === 0 ? '' : `If it takes what it took in the ${one ? 'one past season' : 'two past seasons'}, ${then}; how far seasons differ cannot be told from ${one ? 'one' : 'two'}.${nothing}`;
  }
  const [short, open] = [more.filter(({ fits }) => fits === 'short'), more.filter(({ fits }) => fits === 'open')];
  const says = short.length > 0
    ? `It does not fit in ${names(short)}${open.length > 0 ? `, and may not in ${names(open)}` : ''}.`
    : open.length > 0 ? `It may not fit in ${names(open)}.` : 'It fits in every month, as far as past seasons tell.';
  return `${says}${few.length === 0 ? '' : ` For ${names(few)} there are too few seasons to say.`}${nothing}`;
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
