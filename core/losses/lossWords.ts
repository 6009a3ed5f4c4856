import type { Curve, LossRow } from '#shared/contract/losses.ts';
import { seasonName, type Season } from '#shared/seasons.ts';

/** "26 in 100" */
export function inHundred(share: number): string {
  return `${Math.round(share * 100)} in 100`;
}

/** "anything from 18 to 35 in 100 fits" */
export function fits(low: number, high: number): string {
  const [from, to] = [Math.round(low * 100), Math.round(high * 100)];
  return from === to ? `about ${from} in 100 fits` : `anything from ${from} to ${to} in 100 fits`;
}

/** Below this many at risk, counts lead and a rate is not put in words (methods for colony losses, general rules). */
export const few = 10;

/** What the season's winter says, made from the rows alone. Rows are of one treatment of united colonies. */
export function lossSentences(season: Season, rows: readonly LossRow[], yardName: (code: string) => string): string[] {
  const winters = rows.filter((row) => row.period === 'winter' && row.group === 'all');
  const winter = winters.find((row) => row.season === season);
  if (winter === undefined) return [`The winter of ${seasonName(season)} has not begun; its losses will be here from 1 October on.`];
  if (winter.rate === null || winter.wilson === null) return [`No colonies went into the winter of ${seasonName(season)}.`];
  const sentences = [wholeSentence(winter)];
  const earlier = winters.filter((row) => row.season < season && row.complete && row.rate !== null && row.atRisk > 0);
  const compared = compare(winter, earlier);
  if (compared !== null) sentences.push(compared);
  const worst = worstYard(rows.filter((row) => row.period === 'winter' && row.season === season && row.group !== 'all'), winter);
  if (worst !== null) sentences.push(worstSentence(worst, winter, yardName(worst.group)));
  return sentences;
}

function wholeSentence(row: LossRow): string {
  const [low, high] = row.quasi === null || row.quasi.units < 3 ? (row.wilson ?? [0, 1]) : [row.quasi.lower, row.quasi.upper];
  const colonies = `${row.atRisk} ${row.atRisk === 1 ? 'colony' : 'colonies'}`;
  const lost = row.lost === 0 ? 'none' : String(row.lost);
  if (!row.complete) return `You took ${colonies} into this winter and have lost ${lost} so far; the winter is not over.`;
  if (row.atRisk < few) return `You wintered ${colonies} and lost ${lost}; with so few, ${fits(low, high)}.`;
  return `You wintered ${colonies} and lost ${lost}, ${inHundred(row.rate ?? 0)}; for winters like this, ${fits(low, high)}.`;
}

function compare(winter: LossRow, earlier: readonly LossRow[]): string | null {
  if (!winter.complete || earlier.length === 0 || winter.rate === null || winter.wilson === null) return null;
  const rates = earlier.map((row) => row.rate ?? 0);
  const [lowest, highest] = [Math.min(...rates), Math.max(...rates)];
  const run = earlier.length === 1 ? `Your one earlier winter stood at ${inHundred(lowest)}` : `Your ${earlier.length} earlier winters ran from ${Math.round(lowest * 100)} to ${inHundred(highest)}`;
  const [low, high] = winter.wilson;
  if (winter.rate >= lowest && winter.rate <= highest) return `${run}, so this was an ordinary one.`;
  const worse = winter.rate > highest;
  const clear = worse ? low > highest : high < lowest;
  if (clear) return `${run}; this one was ${worse ? 'worse' : 'better'} than chance alone makes likely.`;
  return `${run}; this one was ${worse ? 'higher' : 'lower'}, but with ${winter.atRisk} colonies that may be chance.`;
}

/** The yard with the highest rate among those that lost any, if it lost more than its share. */
function worstYard(yards: readonly LossRow[], all: LossRow): LossRow | null {
  const lost = yards.filter((row) => row.lost > 0 && row.rate !== null && row.atRisk >= 2);
  if (yards.filter((row) => row.atRisk > 0).length < 2) return null;
  const [worst] = lost.toSorted((a, b) => (b.rate ?? 0) - (a.rate ?? 0));
  return worst !== undefined && all.rate !== null && (worst.rate ?? 0) > all.rate ? worst : null;
}

function worstSentence(worst: LossRow, all: LossRow, name: string): string {
  const [low, high] = worst.wilson ?? [0, 1];
  const rest = { atRisk: all.atRisk - worst.atRisk, lost: all.lost - worst.lost };
  const restRate = rest.atRisk === 0 ? 0 : rest.lost / rest.atRisk;
  const so = `${name} lost ${worst.lost} of its ${worst.atRisk}, the rest ${rest.lost} of ${rest.atRisk}`;
  if (low > restRate && worst.atRisk >= few) return `${so}: more than its number of colonies makes likely.`;
  return `${so}; with ${worst.atRisk} colonies ${fits(low, high)}, so that may be chance.`;
}

/** What a survival curve says at its end. */
export function curveSentence(curve: Curve, end: string, complete: boolean): string {
  if (curve.colonies === 0) return 'No colonies were watched here.';
  if (curve.losses === 0) return `None of ${curve.colonies} colonies was lost ${complete ? end : 'so far'}.`;
  const last = curve.survival.length - 1;
  const alive = curve.survival[last] ?? 1;
  const [low, high] = [curve.low[last] ?? null, curve.high[last] ?? null];
  const range = low === null || high === null ? '' : ` (${Math.round(low * 100)} to ${Math.round(high * 100)})`;
  return `${curve.losses} of ${curve.colonies} colonies watched were lost; of 100, ${Math.round(alive * 100)}${range} would be alive ${complete ? end : 'so far'}.`;
}
