import type { YardId } from '#shared/brands.ts';
import type { Curve } from '#shared/contract/losses.ts';
import { addDays, dayNumber, type Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { kaplanMeier } from '#core/stats/kaplanMeier.ts';

/** One stretch of one colony under observation; days from the axis's own origin. */
interface Span {
  readonly entry: number;
  readonly exit: number;
  readonly lost: boolean;
}

/**
 * Survival since a fixed day: colonies that come later enter late; sold, given, united ones and those alive at
 * the end leave alive. With a yard, a colony counts while it stands there.
 */
export function spansSince(states: readonly ColonyState[], origin: Day, until: Day, asOf: Day, yard?: YardId): Span[] {
  const zero = dayNumber(origin);
  const tomorrow = addDays(asOf, 1);
  const stop = tomorrow < until ? tomorrow : until;
  return states.flatMap((state) => pieces(state, stop, yard).flatMap((piece) => {
    if (piece.until < origin || piece.from >= stop) return [];
    const entry = Math.max(0, dayNumber(piece.from) - zero);
    return span(entry, dayNumber(piece.until) - zero, piece.lost);
  }));
}

/** Survival by the colony's own age in days. In a yard, a colony that came there later enters at the age it had. */
export function spansSinceStart(states: readonly ColonyState[], asOf: Day, yard?: YardId): Span[] {
  return states.flatMap((state) => {
    const zero = dayNumber(state.start);
    return pieces(state, asOf, yard).flatMap((piece) => (piece.from > asOf ? [] : span(dayNumber(piece.from) - zero, dayNumber(piece.until) - zero, piece.lost)));
  });
}

interface Piece {
  readonly from: Day;
  readonly until: Day;
  readonly lost: boolean;
}

/** A colony's time as a whole, or its stretches in one yard, cut off at `stop`. */
function pieces(state: ColonyState, stop: Day, yard: YardId | undefined): Piece[] {
  const died = state.how === 'lost' || state.how === 'absconded';
  if (yard === undefined) return [cut(state.start, state.end, died, stop)];
  return state.stays.flatMap((stay, at) => (stay.yard === yard ? [cut(stay.from, stay.until, died && at === state.stays.length - 1, stop)] : []));
}

function cut(from: Day, end: Day | null, died: boolean, stop: Day): Piece {
  return end === null || end > stop ? { from, until: stop, lost: false } : { from, until: end, lost: died };
}

/** A loss on the very day of entry happened after the entry: it is put half a day later, so that it is not left out. */
function span(entry: number, exit: number, lost: boolean): Span[] {
  if (exit > entry) return [{ entry, exit, lost }];
  return lost ? [{ entry, exit: entry + 0.5, lost }] : [];
}

/** The Kaplan-Meier curve of spans, with the strip of numbers at risk at about six even steps. */
export function curveOf(spans: readonly Span[], last: number, step: number): Curve {
  const riskTimes: number[] = [];
  for (let time = 0; time <= last; time += step) riskTimes.push(time);
  const fit = kaplanMeier(
    { entry: spans.map((one) => one.entry), exit: spans.map((one) => one.exit), status: spans.map((one) => (one.lost ? 1 : 0)) },
    { riskTimes },
  );
  return {
    colonies: fit.n,
    losses: fit.losses,
    times: [...fit.table.time],
    atRisk: [...fit.table.atRisk],
    lost: [...fit.table.lost],
    survival: [...fit.table.survival],
    low: [...fit.table.lowerLogLog],
    high: [...fit.table.upperLogLog],
    censored: [...fit.censored.time],
    strip: fit.numberAtRisk.map((one) => ({ time: one.time, atRisk: one.atRisk })),
    last,
    warning: warningOf(fit),
  };
}

function warningOf(fit: ReturnType<typeof kaplanMeier>): string | null {
  if (fit.n === 0) return 'No colonies were watched here.';
  if (fit.riskSetRanOut !== null) {
    return `On day ${fit.riskSetRanOut.time} every colony then watched was lost; ${fit.riskSetRanOut.later} came later, so the curve says nothing about them.`;
  }
  return null;
}
