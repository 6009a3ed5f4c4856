import type { SeasonCrop, YieldGrouping, YieldRow } from '#shared/contract/yields.ts';
import { counted, fixed, hold, number } from '#shared/figures.ts';
import { gramsPerPound, type MassUnit } from '#shared/units.ts';
import { listed } from '#core/losses/lossNumbers.ts';
import type { YieldParts } from './yieldTable.ts';

const groups: Readonly<Record<YieldGrouping, readonly [one: string, many: string]>> = {
  yard: ['yard', 'yards'], line: ['line', 'lines'], queenAge: ['age of queen', 'ages of queens'], source: ['source', 'sources'], season: ['season', 'seasons'],
};

/** Groups of those of which the line or the queen’s year is not known. */
const unknownKeys: ReadonlySet<string> = new Set(['', 'unknown']);

/** Pounds in the unit of the book, with its name. */
export function massSaid(pounds: number, unit: MassUnit, places = 0): string {
  return `${number(unit === 'lb' ? pounds : (pounds * gramsPerPound) / 1000, places)}${hold}${unit}`;
}

/** What the numbers allow: a difference only where a test over all groups speaks for one. */
export function yieldSentence({ rows, all, test }: YieldParts, by: YieldGrouping, few: number, unit: MassUnit): string {
  const [one, many] = groups[by];
  const compared = rows.filter(({ n }) => n > 0);
  if (all.mean === null) return `No honey was weighed colony by colony, so nothing can be said by ${one}.`;
  const whole = `${massSaid(all.mean, unit)} a colony over ${counted(all.n, 'colony-season', 'colony-seasons')}`;
  if (all.n < few) return `Only ${counted(all.n, 'colony-season was', 'colony-seasons were')} weighed; from ${few} on ${many} are compared.`;
  if (compared.length < 2) return `All that was weighed is of one ${one}: ${whole}.`;
  if (by === 'season') return seasonsSaid(compared, whole, unit);
  const best = top(compared.filter(({ key }) => !unknownKeys.has(key)));
  const unknown = compared.some(({ key }) => unknownKeys.has(key));
  if (test === null || best === null) return `Too little was weighed in each of the ${many} to compare them: ${whole}.`;
  if (test.p >= 0.05) return `What was weighed does not tell the ${many} apart: differences as large come by chance in ${said(test.p)}. All together ${whole}.`;
  const range = best.interval === null ? '' : ` (${massSaid(best.interval[0], unit)} to ${massSaid(best.interval[1], unit)})`;
  return `The ${many} differ by more than chance makes likely. ${unknown ? `Of those that are known the most` : 'The most'} came from ${by === 'yard' || by === 'line' ? best.label : `${best.label.charAt(0).toLowerCase()}${best.label.slice(1)}`}: ${massSaid(best.estimate ?? 0, unit)} a colony${range}; all together ${whole}.`;
}

function seasonsSaid(rows: readonly YieldRow[], whole: string, unit: MassUnit): string {
  const [best, worst] = [top(rows), rows.filter(({ estimate }) => estimate !== null).toSorted((a, b) => (a.estimate ?? 0) - (b.estimate ?? 0))[0] ?? null];
  if (best === null || worst === null || best === worst) return `All together ${whole}.`;
  return `The best season was ${best.label} with ${massSaid(best.estimate ?? 0, unit)} a colony, the poorest ${worst.label} with ${massSaid(worst.estimate ?? 0, unit)}; all together ${whole}.`;
}

/** The group with the highest estimate among those of at least two values. */
function top(rows: readonly YieldRow[]): YieldRow | null {
  return rows.filter(({ n, estimate }) => n > 1 && estimate !== null).toSorted((a, b) => (b.estimate ?? 0) - (a.estimate ?? 0))[0] ?? null;
}

function said(p: number): string {
  return p > 0.995 ? 'almost all cases' : `${fixed(p * 100, 0)}${hold}% of cases`;
}

/** What has to be known of the figures beside them. `whole`: colony-seasons of yards weighed together. */
export function yieldRemarks({ apart, between, rows }: YieldParts, by: YieldGrouping, whole: number): string[] {
  const [, many] = groups[by];
  const remarks: string[] = [];
  if (apart > 0) remarks.push(`${counted(apart, 'colony-season is', 'colony-seasons are')} of years that hold one of the ${many} alone, and ${apart === 1 ? 'is' : 'are'} compared with nothing.`);
  if (between === 0) remarks.push(`There is no sign that the ${many} differ, so each is taken at the mean of all.`);
  const few = rows.filter(({ n }) => n > 0).length;
  if (by !== 'season' && between !== null && few < 6) remarks.push(`With ${few} ${many} the intervals are somewhat short: how much ${many} differ is itself not well known.`);
  if (by !== 'yard' && whole > 0) remarks.push(`${counted(whole, 'colony-season', 'colony-seasons')} of yards weighed together ${whole === 1 ? 'is' : 'are'} not in these figures; by yard and season by season they are.`);
  if (rows.some(({ together }) => together !== null)) remarks.push('Yards weighed together have a mean and no interval, as nobody knows how their colonies differed; they are left out of the comparison.');
  return remarks;
}

/** The latest season with a crop, beside what was printed for the country. */
export function seasonSentence(seasons: readonly SeasonCrop[], unit: MassUnit): string {
  const last = seasons.findLast(({ lb }) => lb > 0);
  if (last === undefined || last.perColony === null) return 'No harvest is in the book yet.';
  const own = `In ${last.season}, ${counted(last.colonies, 'colony', 'colonies')} gave ${massSaid(last.lb, unit)}: ${massSaid(last.perColony, unit, 1)} a colony harvested.`;
  const beside = seasons.findLast(({ nass, perColony }) => nass !== null && perColony !== null);
  if (beside?.nass == null || beside.perColony === null) return own;
  return `${own} In ${beside.season}, the last year with a printed figure here, yours gave ${massSaid(beside.perColony, unit, 1)} and the country’s ${massSaid(beside.nass.perColony, unit, 1)}.`;
}

/** What the honey came to for each hour, and how much of the hours is known. */
export function hourSentence(seasons: readonly SeasonCrop[], unit: MassUnit): string {
  const last = seasons.findLast(({ lb }) => lb > 0);
  if (last === undefined) return '';
  const { season, visits, written, hours, perHour } = last;
  if (written === 0) return `No hours of work are written down for ${season}, so nothing can be said of honey for each hour.`;
  const known = `hours are written down for ${number(written)} of ${counted(visits, 'visit', 'visits')}`;
  if (perHour === null) return `For ${season} ${known}, too few to say how much honey came for each hour.`;
  const [low, high] = perHour.range;
  if (written === visits) return `In ${season} each of ${number(hours, 1)} hours of work brought ${massSaid(perHour.lb, unit, 1)} of honey; ${known}.`;
  return `In ${season} each hour of work brought ${massSaid(perHour.lb, unit, 1)} of honey (${massSaid(low, unit, 1)} to ${massSaid(high, unit, 1)}): ${known}, and the others are taken to have been as long as the rest in their yard.`;
}

/** The years that a printed figure stands beside, by where it was read, and those without one. */
export function printedSentence(seasons: readonly SeasonCrop[]): string {
  const printed = seasons.flatMap(({ season, nass }) => (nass === null ? [] : [{ season, source: nass.source }]));
  const without = seasons.flatMap(({ season, nass }) => (nass === null ? [String(season)] : []));
  const sources = [...Map.groupBy(printed, ({ source }) => source)].map(([source, own]) => `${listed(own.map(({ season }) => String(season)))}: ${source}.`);
  const lacking = without.length === 0 ? [] : [`For ${listed(without)} no printed figure is held here.`];
  return [...sources, ...lacking].join(' ');
}
