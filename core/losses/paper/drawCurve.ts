import type { Curve } from '#shared/contract/losses.ts';
import type { PaperDrawing } from '#shared/contract/paper.ts';
import type { Day } from '#shared/days.ts';
import { cut, drawFrame, drawingOf, field, stepLooks } from './drawFrame.ts';

export interface NamedCurve {
  readonly name: string;
  readonly curve: Curve;
}

/** As many curves as dashes keep apart in black and white. */
export const mostCurves = stepLooks.length;
const { left, right, top, bottom } = field;
const rowHeight = 36;

/** Survival curves on paper, with the band of the first, ticks where colonies left alive, and the number at risk below. */
export function drawCurve(name: string, curves: readonly NamedCurve[], origin: Day | null, end = 1): PaperDrawing {
  const shown = curves.slice(0, mostCurves);
  const last = Math.max(1, end, ...shown.map(({ curve }) => curve.last));
  const frame = drawFrame(last, 1, shown[0]?.curve.strip.map(({ time }) => time) ?? [], origin, '% alive');
  const { marks, x, y, write } = frame;
  shown.forEach(({ name: label, curve }, at) => {
    const look = stepLooks[at] ?? 'line';
    const until = endOf(curve);
    if (at === 0) for (const d of bands(curve, until, x, y)) marks.push({ tag: 'path', d, look: 'band' });
    const steps = curve.times.map((time, place) => `H${x(time)}V${y(curve.survival[place] ?? 0)}`).join('');
    marks.push({ tag: 'path', d: `M${x(curve.from ?? 0)} ${y(1)}${steps}H${x(until)}`, look });
    for (const time of new Set(curve.censored)) marks.push({ tag: 'path', d: `M${x(time)} ${y(aliveAt(curve, time)) - 4}v8`, look: 'tick' });
    const row = top + 24 + at * rowHeight;
    marks.push({ tag: 'path', d: `M${right + 8} ${row}h30`, look });
    write(right + 44, row + 4, cut(label, 19), 'start', 'name');
    write(right + 44, row + 18, `${curve.losses} of ${curve.colonies} lost`);
  });
  write(left, bottom + 38, 'Number at risk');
  shown.forEach(({ name: label, curve }, at) => {
    // After the last day watched nobody is at risk, and a nought would read as if all had died.
    for (const { time, atRisk } of curve.strip) if (time <= endOf(curve)) write(x(time), bottom + 54 + at * 16, String(atRisk), 'middle');
    write(right + 44, bottom + 54 + at * 16, cut(label, 19));
  });
  return drawingOf(name, frame, bottom + 62 + shown.length * 16);
}

/** The band's stretches, each as one closed path; it stops where the limits are not defined. */
function bands(curve: Curve, end: number, x: (time: number) => number, y: (share: number) => number): string[] {
  const found: string[] = [];
  curve.times.forEach((time, at) => {
    const [low, high] = [curve.low[at] ?? null, curve.high[at] ?? null];
    const until = curve.times[at + 1] ?? end;
    if (low !== null && high !== null && until > time) found.push(`M${x(time)} ${y(high)}H${x(until)}V${y(low)}H${x(time)}Z`);
  });
  return found;
}

/** The last day on which a colony was watched. */
function endOf(curve: Curve): number {
  return Math.min(curve.last, curve.times.reduce((latest, time) => Math.max(latest, time), curve.censored.reduce((latest, time) => Math.max(latest, time), 0)));
}

function aliveAt(curve: Curve, time: number): number {
  const at = curve.times.findLastIndex((one) => one <= time);
  return at < 0 ? 1 : (curve.survival[at] ?? 1);
}
