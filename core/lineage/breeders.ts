import { whole, type Slices } from '#shared/slices.ts';
import { meanOf } from '#core/stats/meanInterval.ts';
import { NORMAL_QUANTILE_975 } from '#core/stats/normalQuantile.ts';
import { partialPooling } from '#core/stats/partialPooling.ts';

export const breederTraits = ['winter', 'honey', 'mites', 'temper', 'swarming'] as const;
export type BreederTrait = (typeof breederTraits)[number];
export type BreederWeights = Readonly<Record<BreederTrait, number>>;
/** With fewer nothing can be said of how far breeders differ. */
export const leastBreeders = 3;
/** Fewer values than this beyond what breeders and yard-years take up say nothing of the spread; common practice, no source. */
export const leastFreedom = 5;
/** Turns of the means that are taken together. */
const turnsAtOnce = 4;

/** What one colony did in one season, for the breeder it counts for; more is better. `place`: its yard and season. */
export interface BreederValue {
  readonly breeder: string;
  readonly place: string;
  readonly value: number;
}

/** In standard deviations of single colonies; above 0 is better than the middle of the breeders. */
export interface TraitScore {
  readonly n: number;
  readonly score: number;
  readonly se: number;
  readonly shrinkage: number;
}

/** `says`: why there are no scores; empty where there are. */
export interface TraitScores {
  readonly says: string;
  readonly compared: number;
  /** Spread between breeders, in the unit of the scores: what is thought of one that is not known. */
  readonly spread: number;
  readonly scores: ReadonlyMap<string, TraitScore>;
}

/**
 * Scores of one trait with the yard and year taken off, pulled to the middle where few colonies tell.
 *
 * Method: each value = breeder + yard-year, both fitted by least squares with iterated means (contemporary comparison, as in
 * animal breeding, from memory), so that what befell a yard in a year helps and hurts nobody; a yard-year with one breeder
 * compares nothing and is left out. Values without their yard-year's part go into `partialPooling` (its residuals widened for the
 * degrees of freedom that the yard-years took), and its means are told in standard deviations of single values about their
 * middle. Colony-seasons are taken as independent of each other. Breeders never met in one yard-year, nor through
 * others, are each compared with those they met.
 */
export function traitScores(values: readonly BreederValue[]): TraitScores {
  return whole(traitScoresInSlices(values));
}

function* traitScoresInSlices(values: readonly BreederValue[]): Slices<TraitScores> {
  const compared = [...Map.groupBy(values, ({ place }) => place).values()].filter((own) => own.some(({ breeder }) => breeder !== own[0]?.breeder)).flat();
  yield;
  const none = (says: string): TraitScores => ({ says, compared: compared.length, spread: 0, scores: new Map() });
  if (values.length === 0) return none('Nothing of it is in the record.');
  const breeders = new Set(compared.map(({ breeder }) => breeder));
  if (breeders.size < leastBreeders) return none(`At least ${leastBreeders} breeders must have colonies in the same yards and years; here ${breeders.size === 0 ? 'none' : breeders.size === 1 ? 'one' : 'two'} can be compared.`);
  const places = new Set(compared.map(({ place }) => place));
  const free = compared.length - breeders.size - (places.size - parts(compared));
  if (free < leastFreedom) return none(`Too few: ${compared.length} values of ${breeders.size} breeders in ${places.size} ${places.size === 1 ? 'yard-year' : 'yard-years'}.`);
  yield;
  const offPlace = yield* withoutPlace(compared);
  const widen = Math.sqrt((compared.length - breeders.size) / free);
  const groups = [...Map.groupBy(offPlace, ({ breeder }) => breeder)].map(([group, own]) => {
    const mean = meanOf(own.map(({ value }) => value));
    return { group, values: own.map(({ value }) => mean + widen * (value - mean)) };
  });
  yield;
  const pooling = partialPooling(groups);
  if (pooling === null || pooling.components.msWithin === null) return none('Too few values to compare.');
  const sd = Math.sqrt(pooling.components.msWithin + pooling.tau2);
  if (sd < 1e-9) return none('All were alike.');
  return {
    says: '', compared: compared.length, spread: Math.sqrt(pooling.tau2) / sd,
    scores: new Map(pooling.groups.map(({ group, n, pooled, pooledSe, shrinkage }) => [group, { n, score: (pooled - pooling.mu) / sd, se: pooledSe / sd, shrinkage }])),
  };
}

/**
 * Least squares for two ways of grouping by taking means in turn; the places first, so that a constant in one changes nothing.
 * In plain arrays: a large book has a hundred thousand values, and the turns go over them up to two thousand times.
 */
function* withoutPlace(values: readonly BreederValue[]): Slices<BreederValue[]> {
  const [cells, own] = [grouped(values.map(({ place }) => place)), grouped(values.map(({ breeder }) => breeder))];
  const none = new Float64Array(values.length);
  const given = Float64Array.from(values, ({ value }) => value);
  const [middle, effect, shift] = [none.slice(), none.slice(), none.slice()];
  const apart = none.slice();
  meansOff(given, none, cells, middle, apart);
  const centre = given.map((value, at) => value - (middle[at] as number));
  const size = centre.reduce((most, value) => Math.max(most, Math.abs(value)), 1e-12);
  for (let turn = 0; turn < 2000; turn += 1) {
    if (turn % turnsAtOnce === 0) yield;
    meansOff(centre, effect, cells, shift, apart);
    if (meansOff(centre, shift, own, effect, apart) < 1e-11 * size) break;
  }
  return values.map((one, at) => ({ ...one, value: (centre[at] as number) - (shift[at] as number) }));
}

/** Places of values in the list of all, those of a group side by side; `from`: where each group begins, and the end. */
interface Groups {
  readonly places: Int32Array;
  readonly from: Int32Array;
}

function grouped(keys: readonly string[]): Groups {
  const lists = [...Map.groupBy(keys.keys(), (at) => keys[at]).values()];
  const from = new Int32Array(lists.length + 1);
  for (const [at, list] of lists.entries()) from[at + 1] = (from[at] as number) + list.length;
  return { places: Int32Array.from(lists.flat()), from };
}

/** `apart`: room for as many numbers. Writes for each value into `means` the mean of its group (as `meanOf` takes it) of values less their parts `off`; the most that one moved by. */
function meansOff(values: Float64Array, off: Float64Array, { places, from }: Groups, means: Float64Array, apart: Float64Array): number {
  let moved = 0;
  for (let group = 0; group + 1 < from.length; group += 1) {
    const [begin, end] = [from[group] as number, from[group + 1] as number];
    let sum = 0;
    for (let at = begin; at < end; at += 1) {
      const place = places[at] as number;
      const value = (values[place] as number) - (off[place] as number);
      apart[at] = value;
      sum += value;
    }
    const first = sum / (end - begin);
    let left = 0;
    for (let at = begin; at < end; at += 1) left += (apart[at] as number) - first;
    const mean = first + left / (end - begin);
    moved = Math.max(moved, Math.abs(mean - (means[places[begin] as number] as number)));
    for (let at = begin; at < end; at += 1) means[places[at] as number] = mean;
  }
  return moved;
}

/** Sets of yard-years that are tied together by breeders they share. */
function parts(values: readonly BreederValue[]): number {
  const head = new Map<string, string>();
  const find = (key: string): string => {
    let at = key;
    for (let up = head.get(at) ?? at; up !== at; up = head.get(at) ?? at) {
      // Every step is made shorter for the next to come, so that no chain grows as long as the book.
      const next = head.get(up) ?? up;
      head.set(at, next);
      at = next;
    }
    return at;
  };
  for (const { breeder, place } of values) head.set(find(`b ${breeder}`), find(`p ${place}`));
  return new Set(values.map(({ place }) => find(`p ${place}`))).size;
}

export interface RankedBreeder {
  readonly breeder: string;
  /** By trait; null where nothing of it can be compared. */
  readonly traits: Readonly<Record<BreederTrait, TraitScore | null>>;
  /** Weighted mean of the scores. */
  readonly sum: number;
  readonly limits: readonly [number, number];
  /** Whether it can be told apart from the first. */
  readonly apart: boolean;
}

export interface BreederRanking {
  readonly traits: Readonly<Record<BreederTrait, TraitScores>>;
  /** Best first; empty where no trait with a weight can be compared. */
  readonly ranked: readonly RankedBreeder[];
}

/**
 * Breeders by the weighted mean of their scores. A trait that is not known of one counts as the middle, with the spread between
 * breeders as its error. Errors of traits are taken as independent; 95 % limits. Two are told apart if their difference
 * is over 1.96 of its own standard error, without correction for looking at many pairs. All breeders set the scores; only those `among` are ranked.
 * Weights: 0 or more, else RangeError.
 */
export function breederRanking(values: Readonly<Record<BreederTrait, readonly BreederValue[]>>, weights: BreederWeights, among: (breeder: string) => boolean = () => true): BreederRanking {
  return whole(breederRankingInSlices(values, weights, among));
}

/** The same, one trait after the other, some turns at a time. */
export function* breederRankingInSlices(values: Readonly<Record<BreederTrait, readonly BreederValue[]>>, weights: BreederWeights, among: (breeder: string) => boolean): Slices<BreederRanking> {
  for (const trait of breederTraits) if (!(weights[trait] >= 0 && Number.isFinite(weights[trait]))) throw new RangeError(`a weight is 0 or more, not ${weights[trait]}`);
  const traits = {
    winter: yield* traitScoresInSlices(values.winter), honey: yield* traitScoresInSlices(values.honey), mites: yield* traitScoresInSlices(values.mites),
    temper: yield* traitScoresInSlices(values.temper), swarming: yield* traitScoresInSlices(values.swarming),
  };
  const counted = breederTraits.filter((trait) => weights[trait] > 0 && traits[trait].says === '');
  const whole = counted.reduce((sum, trait) => sum + weights[trait], 0);
  const names = new Set(counted.flatMap((trait) => [...traits[trait].scores.keys()]));
  const of = (trait: BreederTrait, breeder: string) => traits[trait].scores.get(breeder) ?? null;
  const list = [...names].filter(among).map((breeder) => {
    const sum = counted.reduce((total, trait) => total + weights[trait] * (of(trait, breeder)?.score ?? 0), 0) / whole;
    const variance = counted.reduce((total, trait) => total + (weights[trait] * (of(trait, breeder)?.se ?? traits[trait].spread)) ** 2, 0) / whole ** 2;
    return { breeder, sum, variance, own: { winter: of('winter', breeder), honey: of('honey', breeder), mites: of('mites', breeder), temper: of('temper', breeder), swarming: of('swarming', breeder) } };
  }).toSorted((a, b) => b.sum - a.sum || (a.breeder < b.breeder ? -1 : 1));
  const [first] = list;
  return {
    traits,
    ranked: list.map(({ breeder, sum, variance, own }) => {
      const half = NORMAL_QUANTILE_975 * Math.sqrt(variance);
      return { breeder, traits: own, sum, limits: [sum - half, sum + half], apart: first !== undefined && first.sum - sum > NORMAL_QUANTILE_975 * Math.sqrt(first.variance + variance) };
    }),
  };
}
