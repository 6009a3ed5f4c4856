import type { InputOf } from '#shared/contract/contract.ts';
import { readMeasure } from '#shared/typedMeasure.ts';
import type { United } from '#shared/contract/values.ts';

export type Question = InputOf<'order.decide'>;

/** What is typed and chosen: text, so that nothing is changed under the fingers. */
export interface Typing {
  readonly target: string;
  readonly confidence: string;
  readonly frames: '8' | '10';
  readonly splits: 'yes' | 'no';
  readonly queens: 'raised' | 'bought';
  readonly requeen: string;
  readonly budget: string;
  readonly hours: string;
  /** Per cent of the price on offer. */
  readonly price: number;
  /** Per cent lost until spring; null as forecast. */
  readonly loss: number | null;
}

/** A target as typed, or another whole number with its own words; null where none is (as many as were wintered last), undefined if it cannot be read. */
export function readCount(text: string, most = 20_000, own: readonly string[] = ['colony', 'colonies']): number | null | undefined {
  if (text.trim() === '') return null;
  const read = readMeasure(text, { unit: null, own, most, whole: true, suchAs: '24' });
  return read.ok ? read.value : undefined;
}

/** A confidence in per cent as typed, as a share; null if it is no number from 50 to 99. */
export function readConfidence(text: string): number | null {
  const read = readMeasure(text, { unit: '%', least: 50, most: 99, suchAs: '90' });
  return read.ok ? Math.round(read.value * 10) / 1000 : null;
}

const mostBudget = 10_000_000;
const mostHours = 100_000;
const hoursWords = ['h', 'hour', 'hours', 'hr', 'hrs'];
const moneyWords = ['$', 'dollar', 'dollars', 'usd'];
const queenWords = ['queen', 'queens', 'colony', 'colonies'];

/** The question that is typed, or null where something in it cannot be read; `troubleOf` names the fields. */
export function readQuestion(typing: Typing, united: United): Question | null {
  if (Object.values(troubleOf(typing)).some(Boolean)) return null;
  const target = readCount(typing.target);
  const hours = readCount(typing.hours, mostHours, hoursWords);
  const budget = readCount(typing.budget, mostBudget, moneyWords);
  return {
    ...(target === null || target === undefined ? {} : { target }),
    confidence: readConfidence(typing.confidence) ?? 0.8,
    hiveFrames: typing.frames === '8' ? 8 : 10,
    united,
    splits: typing.splits === 'yes',
    splitQueens: typing.queens,
    requeen: readCount(typing.requeen, undefined, queenWords) ?? 0,
    budget: budget === null || budget === undefined ? null : budget * 100,
    ...(hours === null || hours === undefined ? {} : { hours }),
    ...(typing.price === 100 ? {} : { priceFactor: typing.price / 100 }),
    ...(typing.loss === null ? {} : { lossRate: typing.loss / 100 }),
  };
}

/** Which of the typed fields cannot be read. */
export function troubleOf(typing: Typing): Readonly<Record<'target' | 'confidence' | 'requeen' | 'budget' | 'hours', boolean>> {
  return {
    target: readCount(typing.target) === undefined,
    confidence: readConfidence(typing.confidence) === null,
    requeen: readCount(typing.requeen, undefined, queenWords) === undefined,
    budget: readCount(typing.budget, mostBudget, moneyWords) === undefined,
    hours: readCount(typing.hours, mostHours, hoursWords) === undefined,
  };
}
