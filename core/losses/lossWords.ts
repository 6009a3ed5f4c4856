import type { Curve, LossRow } from '#shared/contract/losses.ts';
import { seasonName, type Season } from '#shared/seasons.ts';
import { fisherExactTwoByTwo } from '#core/stats/fisherExactTwoByTwo.ts';
import { riskDifference } from '#core/stats/riskDifference.ts';
import type { TwoByTwo } from '#core/stats/twoByTwo.ts';
import type { WinterBase } from './cohortLoss.ts';

/** "26 in 100"; what is not nought is never rounded to it, nor what is not all to all. */
export function inHundred(share: number): string {
  if (share > 0 && share < 0.005) return 'less than 1 in 100';
  if (share < 1 && share >= 0.995) return 'more than 99 in 100';
  return `${Math.round(share * 100)} in 100`;
}

/** "anything from 18 to 35 in 100 fits" */
export function fits(low: number, high: number): string {
  const [from, to] = [Math.round(low * 100), Math.round(high * 100)];
  return from === to ? `about ${from} in 100 fits` : `anything from ${from} to ${to} in 100 fits`;
}

/** Below this many at risk, counts lead and a rate is not put in words (methods for colony losses, general rules). */
export const few = 10;

/** What the season's winter says. Rows are of one treatment of united colonies; `base`: whose winter it was. */
export function lossSentences(season: Season, rows: readonly LossRow[], yardName: (code: string) => string, base: WinterBase): string[] {
  const { wintered } = base;
  const winters = rows.filter((row) => row.period === 'winter' && row.group === 'all');
  const winter = winters.find((row) => row.season === season);
  if (winter === undefined) return [`The winter of ${seasonName(season)} has not begun; its losses will be here once it has.`];
  if (winter.rate === null || winter.wilson === null) {
    if (wintered === 0) return [`No colonies went into the winter of ${seasonName(season)}.`];
    return [`${wintered === 1 ? 'The one colony' : `All ${wintered} colonies`} that went into the winter of ${seasonName(season)} left the book alive during it, so there is no rate.`];
  }
  const sentences = [wholeSentence(winter, base)];
  const earlier = winters.filter((row) => row.season < season && row.complete && row.rate !== null && row.atRisk >= few);
  const compared = compare(winter, earlier);
  if (compared !== null) sentences.push(compared);
  const yards = rows.filter((row) => row.period === 'winter' && row.season === season && row.group !== 'all' && row.atRisk > 0);
  const worst = worstYard(yards, winter);
  if (worst !== null) sentences.push(worstSentence(worst, winter, yardName(worst.group), yards.length));
  return sentences;
}

/** “You wintered” only where that is the base; what came, was sold or given away during the winter makes the base another. */
function wholeSentence(row: LossRow, { changed, united }: WinterBase): string {
  const [low, high] = rangeOf(row);
  const colonies = `${row.atRisk} ${row.atRisk === 1 ? 'colony' : 'colonies'}`;
  const among = row.united === 'takenOut' || united === 0 ? '' : united === row.lost ? ` (${united === 1 ? 'united into another' : 'all united into others'})` : ` (${united === 1 ? 'one' : united} of them united into ${united === 1 ? 'another' : 'others'})`;
  const lost = row.lost === 0 ? 'none' : `${row.lost}${among}`;
  if (!row.complete) return `Of ${colonies} at risk this winter you have lost ${lost} so far; the winter is not over.`;
  const same = !changed && (united === 0 || row.united === 'lost');
  const lead = same ? `You wintered ${colonies} and lost ${lost}` : `Of ${colonies} at risk in the winter you lost ${lost}`;
  if (row.atRisk < few) return `${lead}; with so few, ${fits(low, high)}.`;
  return `${lead}, ${inHundred(row.rate ?? 0)}; for winters like this, ${fits(low, high)}.`;
}

/** Across three or more yards the interval that lets them differ; with none or all lost the exact one; else Wilson's. */
function rangeOf(row: LossRow): [number, number] {
  if (row.lost === 0 || row.lost === row.atRisk) return row.clopperPearson ?? [0, 1];
  return row.quasi === null || row.quasi.units < 3 ? (row.wilson ?? [0, 1]) : [row.quasi.lower, row.quasi.upper];
}

/** Against the worst or best earlier winter; both counts carry their chance, so the difference has the interval. */
function compare(winter: LossRow, earlier: readonly LossRow[]): string | null {
  if (!winter.complete || winter.atRisk < few || earlier.length === 0 || winter.rate === null) return null;
  const ordered = earlier.toSorted((a, b) => (a.rate ?? 0) - (b.rate ?? 0));
  const [lowest, highest] = [ordered[0], ordered.at(-1)];
  if (lowest === undefined || highest === undefined) return null;
  const [least, most] = [lowest.rate ?? 0, highest.rate ?? 0];
  const run = earlier.length === 1 ? `Your one earlier winter stood at ${inHundred(least)}` : `Your ${earlier.length} earlier winters ran from ${Math.round(least * 100)} to ${inHundred(most)}`;
  if (winter.rate >= least && winter.rate <= most) return earlier.length === 1 ? `${run}, the same.` : `${run}, so this was an ordinary one.`;
  const worse = winter.rate > most;
  const other = worse ? highest : lowest;
  const difference = riskDifference(against(winter, other));
  const clear = difference !== null && (worse ? difference.newcombe.lower > 0 : difference.newcombe.upper < 0);
  if (clear) return `${run}; this one was ${worse ? 'worse' : 'better'} than chance alone makes likely.`;
  return `${run}; this one was ${worse ? 'higher' : 'lower'}, but with ${winter.atRisk} colonies and ${other.atRisk} that may be chance.`;
}

/** Fewer losses than this in all are shown as counts and not compared (methods for colony losses, 2x2 tables). */
const fewLosses = 5;

/** The yard with the highest rate, if it lost more than its share and there is enough to compare. */
function worstYard(yards: readonly LossRow[], all: LossRow): LossRow | null {
  if (all.lost < fewLosses || all.rate === null || yards.filter((row) => row.atRisk > 0).length < 2) return null;
  const lost = yards.filter((row) => row.lost > 0 && row.rate !== null && row.atRisk >= 2);
  const [worst] = lost.toSorted((a, b) => (b.rate ?? 0) - (a.rate ?? 0) || b.atRisk - a.atRisk);
  return worst !== undefined && (worst.rate ?? 0) > all.rate ? worst : null;
}

/** The yard was picked because it is the worst, so its exact test is held against as many yards as there were to pick from. */
function worstSentence(worst: LossRow, all: LossRow, name: string, yards: number): string {
  const [low, high] = worst.wilson ?? [0, 1];
  const rest = { atRisk: all.atRisk - worst.atRisk, lost: all.lost - worst.lost };
  const { p } = fisherExactTwoByTwo(against(worst, rest));
  const so = `${name} lost ${worst.lost} of its ${worst.atRisk}, the rest ${rest.lost} of ${rest.atRisk}`;
  if (p * yards < 0.05) return `${so}: more than chance makes likely, allowing for ${yards} yards.`;
  return `${so}; with ${worst.atRisk} colonies ${fits(low, high)}, so that may be chance.`;
}

function against(one: { lost: number; atRisk: number }, other: { lost: number; atRisk: number }): TwoByTwo {
  return { a: one.lost, b: one.atRisk - one.lost, c: other.lost, d: other.atRisk - other.lost };
}

/** What the curve of a winter says at its end. A curve takes united colonies as leaving alive; where the rates count them as lost, it says so. */
export function winterCurveSentence(curve: Curve, complete: boolean, unitedAlive: number): string {
  if (curve.colonies === 0) return 'No colonies were watched here.';
  const end = complete ? 'by the end of the winter' : 'so far';
  if (curve.losses === 0) return curve.colonies === 1 ? `The one colony watched was not lost ${end}.` : `None of ${curve.colonies} colonies was lost ${end}.`;
  const share = curve.colonies < few ? null : shareAt(curve, curve.last);
  const apart = unitedAlive === 0 ? '' : ` ${unitedAlive === 1 ? 'One united colony is' : `${unitedAlive} united colonies are`} taken here as leaving alive.`;
  return `${curve.losses} of ${curve.colonies} colonies watched were lost ${end}${share === null ? '' : `: ${share} were still alive`}.${apart}`;
}

/** What the curve by age says of one and of two years; only where enough colonies were watched that long. */
export function ageCurveSentence(curve: Curve, atRiskAt: (time: number) => number): string {
  if (curve.colonies === 0) return 'No colonies were watched here.';
  if (curve.losses === 0) return curve.colonies === 1 ? 'The one colony watched was not lost.' : `None of ${curve.colonies} colonies was lost.`;
  const said = [{ days: 365, words: 'a year' }, { days: 730, words: 'two years' }].flatMap(({ days, words }) => {
    if (atRiskAt(days) >= few && (curve.times[0] ?? 0) > days) return [`none was lost within ${words} of its start`];
    const share = atRiskAt(days) < few ? null : shareAt(curve, days);
    return share === null ? [] : [`${share} were alive ${words} after their start`];
  });
  const lost = `${curve.losses} of ${curve.colonies} colonies watched were lost`;
  return said.length === 0 ? `${lost}; too few were watched for a year to say more.` : `${lost}; ${said.join(', and ')}.`;
}

/** "71 of 100 (64 to 77)" at a time, or null where the curve has no band there. */
function shareAt(curve: Curve, time: number): string | null {
  const at = curve.times.findLastIndex((one) => one <= time);
  if (at < 0) return null;
  const [alive, low, high] = [curve.survival[at], curve.low[at] ?? null, curve.high[at] ?? null];
  if (alive === undefined || low === null || high === null) return null;
  return `${Math.round(alive * 100)} of 100 (${Math.round(low * 100)} to ${Math.round(high * 100)})`;
}
