import type { Curve } from '#shared/contract/losses.ts';
import type { Day } from '#shared/days.ts';
import { linearScale, px } from './scale.ts';
import { fitted, spread, textSize, textWidth } from './text.ts';
import { ageTicks, countsYears, monthTicks, type TimeTick } from './timeTicks.ts';
import { words } from './words.ts';

export interface SurvivalLine {
  readonly key: string;
  readonly label: string;
  /** Place in the fixed order of series, so that a yard keeps its colour and dash whatever else is shown. */
  readonly place: number;
  readonly curve: Curve;
}

/** Without an origin the axis counts days from each colony's own start, or from the first day of many winters. */
export interface SurvivalOptions {
  readonly origin: Day | null;
  /** What the days count from where there is no origin; the colony's start unless told. */
  readonly since?: 'start' | 'winter';
  readonly width: number;
  readonly height?: number;
}

export interface PlacedText {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface SurvivalGeometry {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly yTicks: readonly { y: number; label: string }[];
  readonly xTicks: readonly { x: number }[];
  readonly xLabels: readonly PlacedText[];
  readonly axisTitle: PlacedText | null;
  readonly lines: readonly {
    readonly key: string;
    readonly fullLabel: string;
    readonly place: number;
    readonly path: string;
    readonly bands: readonly string[];
    readonly censored: readonly { x: number; y: number }[];
    readonly end: { x: number; y: number };
    readonly label: PlacedText;
    readonly strip: readonly PlacedText[];
    readonly stripLabel: PlacedText;
  }[];
  readonly stripTitle: PlacedText;
}

const rowHeight = 17;
/** Half of a four-digit number at risk, which stands centred on the end of the axis, and a space. */
const labelGap = 20;

/** Where everything of the survival picture stands, in pixels; a pure function of the curves and the size. */
export function survivalGeometry(all: readonly SurvivalLine[], options: SurvivalOptions): SurvivalGeometry {
  const lines = all.filter(({ curve }) => curve.colonies > 0);
  const { width } = options;
  const height = options.height ?? 210;
  const left = 32;
  const labelRoom = Math.min(width * 0.36, Math.max(48, ...lines.map(({ label }) => textWidth(label) + labelGap)));
  const right = width - labelRoom;
  const top = 10;
  const bottom = top + height;
  const last = Math.max(1, ...lines.map(({ curve }) => curve.last));
  const x = linearScale([0, last], [left, right]);
  const y = linearScale([0, 1], [bottom, top]);

  const ticks = options.origin === null ? ageTicks(last) : monthTicks(options.origin, last);
  const xLabels = thinned(ticks, x, bottom + 18);
  const axisTitle =
    options.origin === null
      ? ({ x: left, y: bottom + 36, text: options.since === 'winter' ? words.daysSinceWinter : countsYears(last) ? words.yearsSinceStart : words.daysSinceStart, anchor: 'start' } as const)
      : null;

  const stripTop = bottom + (axisTitle ? 60 : 42);
  const ends = lines.map(({ curve }) => ({ x: x(watchedUntil(curve)), y: y(curve.survival.at(-1) ?? 1) }));
  const namesAt = Math.max(left, ...ends.map((end) => end.x)) + 8;
  const labelPlaces = spread(ends.map((end) => end.y), textSize + 3, top + 4, bottom - 2);

  return {
    width,
    height: stripTop + lines.length * rowHeight + 8,
    left,
    right,
    top,
    bottom,
    yTicks: [0, 25, 50, 75, 100].map((percent) => ({ y: px(y(percent / 100)), label: String(percent) })),
    xTicks: ticks.map(({ at }) => ({ x: px(x(at)) })),
    xLabels,
    axisTitle,
    lines: lines.map((line, index) => {
      const stripY = stripTop + (index + 1) * rowHeight;
      const end = ends[index] ?? { x: right, y: top };
      const label = fitted(line.label, labelRoom - labelGap);
      return {
        key: line.key,
        fullLabel: line.label,
        place: line.place,
        path: stepPath(line.curve, x, y),
        bands: bandPaths(line.curve, x, y),
        censored: censorMarks(line.curve, x, y),
        end: { x: px(end.x), y: px(end.y) },
        label: { x: px(namesAt), y: px((labelPlaces[index] ?? end.y) + 4), text: label, anchor: 'start' },
        strip: stripTexts(line.curve, x, stripY),
        stripLabel: { x: px(right + labelGap), y: stripY, text: label, anchor: 'start' },
      };
    }),
    stripTitle: { x: left, y: stripTop, text: words.atRisk, anchor: 'start' },
  };
}

type Scale = (value: number) => number;

/** The last day on which anything is known of the group: while a winter still runs, the axis goes on beyond it. */
export function watchedUntil(curve: Curve): number {
  return Math.min(curve.last, Math.max(0, curve.times.at(-1) ?? 0, ...curve.censored));
}

function stepPath(curve: Curve, x: Scale, y: Scale): string {
  let path = `M${px(x(curve.from ?? 0))} ${px(y(1))}`;
  curve.times.forEach((time, index) => (path += `H${px(x(time))}V${px(y(curve.survival[index] ?? 0))}`));
  return `${path}H${px(x(watchedUntil(curve)))}`;
}

/** One closed shape for each unbroken run of days on which the band is defined. */
function bandPaths(curve: Curve, x: Scale, y: Scale): string[] {
  const paths: string[] = [];
  let upper = '';
  let lower = '';
  curve.times.forEach((time, index) => {
    const low = curve.low[index] ?? null;
    const high = curve.high[index] ?? null;
    const from = px(x(time));
    const to = px(x(curve.times[index + 1] ?? watchedUntil(curve)));
    if (low === null || high === null) return flush();
    upper = upper === '' ? `M${from} ${px(y(high))}H${to}` : `${upper}V${px(y(high))}H${to}`;
    lower = `V${px(y(low))}H${from}${lower}`;
  });
  flush();
  return paths;

  function flush() {
    if (upper !== '') paths.push(`${upper}${lower}Z`);
    upper = '';
    lower = '';
  }
}

/** One mark for each pixel column in which some colony left alive; marks closer than 2 px are one. */
function censorMarks(curve: Curve, x: Scale, y: Scale): { x: number; y: number }[] {
  const marks: { x: number; y: number }[] = [];
  let step = 0;
  for (const time of [...curve.censored].sort((a, b) => a - b)) {
    while (step < curve.times.length && (curve.times[step] ?? Infinity) <= time) step += 1;
    const mark = { x: px(x(time)), y: px(y(step === 0 ? 1 : (curve.survival[step - 1] ?? 0))) };
    const before = marks.at(-1);
    if (!before || mark.x - before.x >= 2 || mark.y !== before.y) marks.push(mark);
  }
  return marks;
}

function stripTexts(curve: Curve, x: Scale, y: number): PlacedText[] {
  const watched = curve.strip.filter(({ time }) => time <= watchedUntil(curve));
  return spaced(watched.map(({ time, atRisk }) => ({ x: px(x(time)), y, text: String(atRisk), anchor: 'middle' as const })));
}

function thinned(ticks: readonly TimeTick[], x: Scale, y: number): PlacedText[] {
  return spaced(ticks.map(({ labelAt, label }) => ({ x: px(x(labelAt)), y, text: label, anchor: 'middle' as const })));
}

/** Keeps every n-th text, with the smallest n at which none touches its neighbour. */
function spaced(texts: readonly PlacedText[]): PlacedText[] {
  for (let every = 1; every < texts.length; every += 1) {
    const kept = texts.filter((_, index) => index % every === 0);
    const free = kept.every((text, index) => {
      const next = kept[index + 1];
      return !next || next.x - text.x >= (textWidth(text.text) + textWidth(next.text)) / 2 + 4;
    });
    if (free) return kept;
  }
  return texts.slice(0, 1);
}
