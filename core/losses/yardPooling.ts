import type { LossFactors } from '#shared/contract/lossFactors.ts';
import { pooledRates } from '#core/stats/pooledRates.ts';
import { wilsonInterval } from '#core/stats/wilsonInterval.ts';
import type { WinterRow } from './winterRows.ts';

type Pooled = LossFactors['yards'];

/**
 * Yards in order of their loss, each pulled towards what would be expected of it: the rate of all yards in the
 * winters it was there, weighed by its colonies. So a yard that stood only in a bad winter is not called bad for it,
 * and a small yard is not first or last by chance alone.
 */
export function yardPooling(all: readonly WinterRow[], nameOf: (code: string) => string, few: number): Pooled {
  const rows = all.filter(({ fate }) => fate !== 'left');
  const seasons = Map.groupBy(rows, ({ season }) => season);
  const rate = new Map([...seasons].map(([season, own]) => [season, own.filter(({ fate }) => fate === 'lost').length / own.length]));
  const units = [...Map.groupBy(rows, ({ yard }) => yard)].map(([yard, own]) => ({
    yard, atRisk: own.length, lost: own.filter(({ fate }) => fate === 'lost').length, expected: own.reduce((sum, { season }) => sum + (rate.get(season) ?? 0), 0) / own.length,
  }));
  const lost = units.reduce((sum, unit) => sum + unit.lost, 0);
  if (rows.length === 0) return { sentence: '', rows: [] };
  if (units.length < 3) return { sentence: units.length === 1 ? 'There is one yard, so there are no yards to rank.' : 'Two yards are too few to judge how much yards differ, so they are not ranked.', rows: [] };
  if (lost === 0 || lost === rows.length) return { sentence: `${lost === 0 ? 'Nothing' : 'Everything'} was lost, so yards are not ranked.`, rows: [] };
  const pooled = pooledRates(units);
  if (pooled === null) return { sentence: 'How much yards differ cannot be judged, so they are not ranked.', rows: [] };
  const ranked = units
    .flatMap(({ yard, atRisk, lost: own }, at) => {
      const one = pooled.units[at];
      const wilson = wilsonInterval(own, atRisk);
      if (!one || wilson === null) return [];
      // As if every yard had stood in the same winters: the whole rate, times how the yard did against what was expected.
      const fair = (share: number) => Math.min(1, (share * one.ratio * (lost / rows.length)) / one.pooled);
      return [{ yard, name: nameOf(yard), atRisk, lost: own, rate: own / atRisk, wilson: [wilson.lower, wilson.upper] as [number, number], pooled: fair(one.pooled), range: [fair(one.limits.lower), fair(one.limits.upper)] as [number, number], ratio: one.ratio }];
    })
    .toSorted((one, other) => other.ratio - one.ratio || one.name.localeCompare(other.name));
  const [first, final] = [ranked[0], ranked.at(-1)];
  if (first === undefined || final === undefined) return { sentence: '', rows: [] };
  const inHundred = (share: number) => Math.round(share * 100);
  const alike = 1 / (1 + rows.length) >= pooled.rho * 0.999;
  if (lost < 5 || rows.length < few) return { sentence: 'Too few were lost to rank yards.', rows: [] };
  return {
    sentence: alike
      ? `Yards differed no more than chance would have it; pulled towards the whole they run from ${inHundred(Math.min(first.pooled, final.pooled))} to ${inHundred(Math.max(first.pooled, final.pooled))} in 100.`
      : `Pulled towards the whole, ${first.name} stands highest at ${inHundred(first.pooled)} in 100 and ${final.name} lowest at ${inHundred(final.pooled)}${first.range[0] <= final.range[1] ? '; their ranges overlap, so even that order may be chance' : ''}.`,
    rows: ranked,
  };
}
