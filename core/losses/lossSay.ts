import { dayInWords, daysBetween, type Day } from '#shared/days.ts';
import { clopperPearsonInterval } from '#core/stats/clopperPearsonInterval.ts';
import { noticeableDifference } from '#core/stats/noticeableDifference.ts';
import { capital, colonies, listed, losses } from './lossNumbers.ts';
import type { WinterRow } from './winterRows.ts';

export interface SayFacts {
  readonly rows: readonly WinterRow[];
  readonly winters: number;
  readonly tests: number;
  readonly fewestLosses: number;
  readonly few: number;
  /** False while the chosen winter runs. */
  readonly complete: boolean;
  readonly asOf: Day;
  readonly lastRecord: Day | null;
  /** The day after the last winter's last, or after the as-of day while it runs. */
  readonly until: Day;
}

/** Days without a record at a winter's end after which it may hide losses. */
const longSilence = 60;

/** What the numbers can and cannot say: how much they could show, what they cannot tell apart, and how whole they are. */
export function lossSay(facts: SayFacts): string[] {
  if (facts.rows.length === 0) return ['Nothing about a colony is on record for this winter, so there is nothing that the numbers could say.'];
  return [power(facts), apart(facts), whole(facts)];
}

function power({ rows, tests, fewestLosses }: SayFacts): string {
  const counted = rows.filter(({ fate }) => fate !== 'left');
  const lost = counted.filter(({ fate }) => fate === 'lost').length;
  const n = counted.length;
  if (n === 0) return 'All colonies were sold, given away or united during the winter, so no fate is known and nothing can be compared.';
  if (lost === 0 || lost === n) {
    const limits = clopperPearsonInterval(lost, n) ?? { lower: 0, upper: 1 };
    const could = lost === 0 ? `a winter in which up to ${Math.round(limits.upper * 100)} of 100 die could still look like this` : `a winter in which as few as ${Math.round(limits.lower * 100)} of 100 die could still look like this`;
    const all = n === 1 ? `The one colony was${lost === 0 ? ' not' : ''} lost` : `${lost === 0 ? 'None' : 'All'} of ${colonies(n)} were lost`;
    return `${all}, so there is nothing to compare; ${could}.`;
  }
  if (lost < fewestLosses) return `With ${losses(lost)} among ${colonies(n)} no group is compared with another: whatever the groups, chance alone could have made them.`;
  const difference = noticeableDifference(n, lost / n);
  if (difference === null) return `With ${losses(lost)} among ${colonies(n)}, not even the largest difference between two halves of them would be told from chance four times in five.`;
  const before = tests > 1 ? `, and more than that when ${tests} comparisons are made at once` : '';
  return `With ${losses(lost)} among ${colonies(n)}, two halves of them would have to differ by about ${Math.round(difference * 100)} in 100 to be noticed four times in five${before}; smaller differences can be real and not show.`;
}

function apart({ rows, few }: SayFacts): string {
  const treated = rows.filter(({ colony }) => colony.treated.length > 0);
  const others = rows.filter(({ colony }) => colony.treated.length === 0);
  if (treated.length === 0) return 'No treatment before winter is on record, so what treating does cannot be told from these numbers.';
  if (others.length === 0) return `${rows.length === 1 ? 'The one colony was' : `All ${colonies(rows.length)} were`} treated before winter, so what treating does cannot be told from these numbers.`;
  if (others.length < few || treated.length < few) {
    const side = others.length < treated.length ? `only ${others.length} of ${rows.length} had no treatment` : `only ${treated.length} of ${rows.length} had a treatment`;
    return `${capital(side)} before winter on record, too few to tell what treating does.`;
  }
  const [withIt, without] = [treated, others].map((side) => new Set(side.map(({ season, yard }) => `${season} ${yard}`)));
  const lead = 'Nobody drew lots over what was treated';
  if (![...(withIt ?? [])].some((key) => without?.has(key))) return `${lead}: it went by whole yards, so what treating did cannot be told from what the yard did.`;
  const means = [treated, others].map((side) => side.flatMap(({ colony }) => colony.mites?.per100 ?? []));
  const [ofTreated, ofOthers] = means.map((values) => (values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length));
  if (ofTreated === null || ofOthers === null || ofTreated === undefined || ofOthers === undefined) {
    return `${lead}, and ${ofTreated === null && ofOthers === null ? 'no late-summer mites were counted' : `no late-summer mites were counted in the ${ofTreated === null ? 'treated' : 'others'}`}: whether it was the worried-about colonies that were treated is not known, so more losses among them would not mean that treating did harm.`;
  }
  const gap = `${ofTreated.toFixed(1)} mites per 100 bees where counted, against ${ofOthers.toFixed(1)} in the others`;
  if (ofTreated > ofOthers) return `${lead}: the treated had ${gap}, so more losses among them would not mean that treating did harm.`;
  return `${lead}: the treated had ${gap}, some perhaps counted after treating, so fewer losses among them would not prove that treating helped.`;
}

function whole({ rows, complete, asOf, lastRecord, until, winters }: SayFacts): string {
  const left = rows.filter(({ fate }) => fate === 'left').length;
  const silent = lastRecord !== null && lastRecord < until && daysBetween(lastRecord, until) > longSilence && rows.some(({ fate }) => fate === 'lived');
  const went = left === 0 ? [] : [`${colonies(left)} sold, given away or united during the winter ${left === 1 ? 'is' : 'are'} in no count`];
  const gaps = coverage(rows);
  const state = silent
    ? `the last record of a colony is of ${dayInWords(lastRecord)}, so losses after it are not in here`
    : !complete
      ? `the winter is not over: losses are counted to ${dayInWords(asOf)}`
      : winters > 1 ? `all ${winters} winters are counted to their end` : 'the winter is counted to its end';
  return `${capital([state, ...went, ...gaps].join('; '))}.`;
}

/** What was looked at in fewer than two of three colonies. */
function coverage(rows: readonly WinterRow[]): string[] {
  const seen = [
    { name: 'late-summer mites', was: 'were counted', count: rows.filter(({ colony }) => colony.mites !== null).length },
    { name: 'autumn stores', was: 'are on record', count: rows.filter(({ colony }) => colony.stores !== null).length },
    { name: 'the queen’s year', was: 'is on record', count: rows.filter(({ colony }) => colony.queenAge !== null).length },
  ];
  const none = seen.filter(({ count }) => count === 0).map(({ name }) => name);
  const thin = seen.filter(({ count }) => count > 0 && count * 3 < rows.length * 2);
  return [
    ...(none.length === 0 ? [] : [`nothing is on record of ${listed(none)}, and nothing is said about that`]),
    ...(thin.length === 0 ? [] : [`${listed(thin.map(({ name, was, count }) => `${name} ${was} in ${count} of ${rows.length}`))}, and what is said of ${thin.length === 1 ? 'that' : 'those'} is said of these colonies alone`]),
  ];
}
