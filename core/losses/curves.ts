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

/** Spans of all colonies as wholes, and of each yard while they stood there. */
export interface SpanSet {
  readonly all: readonly Span[];
  readonly byYard: ReadonlyMap<YardId, readonly Span[]>;
}

/**
 * Survival since a fixed day: colonies that come later enter late; sold, given, united ones and those alive at
 * the end leave alive. In a yard, a colony counts while it stands there.
 */
export function spansSince(states: readonly ColonyState[], origin: Day, until: Day, asOf: Day): SpanSet {
  const zero = dayNumber(origin);
  const tomorrow = addDays(asOf, 1);
  const stop = tomorrow < until ? tomorrow : until;
  // What ends on the first day after the window belongs to the next one; it is cut off like what lives on.
  const within = states.map((state) => (state.end === stop ? { ...state, how: 'alive' as const } : state));
  return spanSet(within, stop, (piece) => {
    if (piece.until < origin || piece.from >= stop) return null;
    return span(Math.max(0, dayNumber(piece.from) - zero), dayNumber(piece.until) - zero, piece.lost);
  });
}

/** Survival by the colony's own age in days. In a yard, a colony that came there later enters at the age it had. */
export function spansSinceStart(states: readonly ColonyState[], asOf: Day): SpanSet {
  return spanSet(states, asOf, (piece, state) => {
    if (piece.from > asOf) return null;
    const zero = dayNumber(state.start);
    return span(dayNumber(piece.from) - zero, dayNumber(piece.until) - zero, piece.lost);
  });
}

interface Piece {
  readonly from: Day;
  readonly until: Day;
  readonly lost: boolean;
}

/** A colony's time as a whole and its stretches in yards, cut off at `stop`, each turned into a span where it shows in the window. */
function spanSet(states: readonly ColonyState[], stop: Day, toSpan: (piece: Piece, state: ColonyState) => Span | null): SpanSet {
  const all: Span[] = [];
  const byYard = new Map<YardId, Span[]>();
  for (const state of states) {
    const died = state.how === 'lost' || state.how === 'absconded';
    const whole = toSpan(cut(state.start, state.end, died, stop), state);
    if (whole !== null) all.push(whole);
    for (const [at, stay] of state.stays.entries()) {
      const part = toSpan(cut(stay.from, stay.until, died && at === state.stays.length - 1, stop), state);
      if (part === null) continue;
      const own = byYard.get(stay.yard);
      if (own === undefined) byYard.set(stay.yard, [part]);
      else own.push(part);
    }
  }
  return { all, byYard };
}

function cut(from: Day, end: Day | null, died: boolean, stop: Day): Piece {
  return end === null || end > stop ? { from, until: stop, lost: false } : { from, until: end, lost: died };
}

/** A loss on the very day of entry happened after the entry: it is put half a day later, so that it is not left out. */
function span(entry: number, exit: number, lost: boolean): Span | null {
  if (exit > entry) return { entry, exit, lost };
  return lost ? { entry, exit: entry + 0.5, lost } : null;
}

/** The Kaplan-Meier curve of spans, with the strip of numbers at risk at about six even steps. */
export function curveOf(spans: readonly Span[], last: number, step: number): Curve {
  const riskTimes: number[] = [];
  for (let at = 0; at * step <= last + 1e-9; at += 1) riskTimes.push(at * step);
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
