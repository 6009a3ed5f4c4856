import type { InputOf } from '#shared/contract/contract.ts';
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

/** A target as typed; null where none is (as many as were wintered last), undefined if it cannot be read. */
export function readCount(text: string, most = 20_000): number | null | undefined {
  const typed = text.trim().replace(/,/g, '');
  if (typed === '') return null;
  return /^\d{1,8}$/.test(typed) && Number(typed) <= most ? Number(typed) : undefined;
}

/** A confidence in per cent as typed, as a share; null if it is no number from 50 to 99. */
export function readConfidence(text: string): number | null {
  const typed = text.trim().replace(/\s*%$/, '').replace(',', '.');
  if (!/^\d{2}(\.\d)?$/.test(typed)) return null;
  const share = Math.round(Number(typed) * 10) / 1000;
  return share >= 0.5 && share <= 0.99 ? share : null;
}

const mostBudget = 10_000_000;
const mostHours = 100_000;

/** The question that is typed, or null where something in it cannot be read; `troubleOf` names the fields. */
export function readQuestion(typing: Typing, united: United): Question | null {
  if (Object.values(troubleOf(typing)).some(Boolean)) return null;
  const target = readCount(typing.target);
  const hours = readCount(typing.hours, mostHours);
  const budget = readCount(typing.budget, mostBudget);
  return {
    ...(target === null || target === undefined ? {} : { target }),
    confidence: readConfidence(typing.confidence) ?? 0.8,
    hiveFrames: typing.frames === '8' ? 8 : 10,
    united,
    splits: typing.splits === 'yes',
    splitQueens: typing.queens,
    requeen: readCount(typing.requeen) ?? 0,
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
    requeen: readCount(typing.requeen) === undefined,
    budget: readCount(typing.budget, mostBudget) === undefined,
    hours: readCount(typing.hours, mostHours) === undefined,
  };
}
