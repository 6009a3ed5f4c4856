import type { Curve } from '#shared/contract/losses.ts';
import type { PaperDrawing, PaperMark } from '#shared/contract/paper.ts';
import { addDays, dayInWords, type Day } from '#shared/days.ts';

export interface NamedCurve {
  readonly name: string;
  readonly curve: Curve;
}

const looks = ['line', 'line-dashed', 'line-dotted'] as const;
const width = 640;
const left = 44;
const right = 500;
const top = 12;
const bottom = 210;

/** Survival curves on paper, at most three, with the band of the first, ticks where colonies left alive, and the number at risk below. */
export function drawCurve(name: string, curves: readonly NamedCurve[], origin: Day | null): PaperDrawing {
  const shown = curves.slice(0, looks.length);
  const last = Math.max(1, ...shown.map(({ curve }) => curve.last));
  const x = (time: number) => round(left + (Math.min(time, last) / last) * (right - left));
  const y = (share: number) => round(bottom - share * (bottom - top));
  const marks: PaperMark[] = [];
  const text = (at: number, down: number, words: string, anchor: 'start' | 'middle' | 'end' = 'start', look: 'label' | 'name' = 'label') => marks.push({ tag: 'text', x: at, y: down, text: words, anchor, look });
  for (const share of [0, 0.25, 0.5, 0.75, 1]) {
    marks.push({ tag: 'path', d: `M${left} ${y(share)}H${right}`, look: share === 0 ? 'axis' : 'grid' });
    text(left - 6, y(share) + 4, String(share * 100), 'end');
  }
  text(right + 8, top + 4, '% alive');
  for (const { time } of shown[0]?.curve.strip ?? []) {
    marks.push({ tag: 'path', d: `M${x(time)} ${bottom}v5`, look: 'axis' });
    text(x(time), bottom + 18, origin === null ? `${Math.round(time)} d` : dayInWords(addDays(origin, Math.round(time))).split(' ').slice(0, 2).map((part) => part.slice(0, 3)).join(' '), 'middle');
  }
  shown.forEach(({ name: label, curve }, at) => {
    const look = looks[at] ?? 'line';
    const end = endOf(curve);
    if (at === 0) for (const d of bands(curve, end, x, y)) marks.push({ tag: 'path', d, look: 'band' });
    const steps = curve.times.map((time, place) => `H${x(time)}V${y(curve.survival[place] ?? 0)}`).join('');
    marks.push({ tag: 'path', d: `M${left} ${y(1)}${steps}H${x(end)}`, look });
    for (const time of new Set(curve.censored)) marks.push({ tag: 'path', d: `M${x(time)} ${y(aliveAt(curve, time)) - 4}v8`, look: 'tick' });
    const row = top + 24 + at * 34;
    marks.push({ tag: 'path', d: `M${right + 8} ${row}h26`, look });
    text(right + 40, row + 4, label, 'start', 'name');
    text(right + 40, row + 18, `${curve.losses} of ${curve.colonies} lost`);
  });
  text(left, bottom + 38, 'Number at risk');
  shown.forEach(({ name: label, curve }, at) => {
    // After the last day watched nobody is at risk, and a nought would read as if all had died.
    for (const { time, atRisk } of curve.strip) if (time <= endOf(curve)) text(x(time), bottom + 54 + at * 16, String(atRisk), 'middle');
    text(right + 40, bottom + 54 + at * 16, label);
  });
  return { name, width, height: bottom + 62 + shown.length * 16, marks };
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

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
