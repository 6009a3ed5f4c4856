import type { Incidence } from '#shared/contract/lossSections.ts';
import type { Day } from '#shared/days.ts';
import { linearScale, niceTicks, px } from './scale.ts';
import type { PlacedText } from './survivalGeometry.ts';
import { spread, textSize, textWidth } from './text.ts';
import { monthTicks } from './timeTicks.ts';

export interface IncidenceOptions {
  /** First day of the axis; without one it counts days. */
  readonly origin: Day | null;
  readonly last: number;
  readonly width: number;
  readonly height?: number;
  readonly names: Readonly<Record<Incidence['fates'][number]['fate'], string>>;
}

export interface IncidenceGeometry {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly yTicks: readonly { y: number; label: string }[];
  readonly xTicks: readonly number[];
  readonly xLabels: readonly PlacedText[];
  readonly lines: readonly { readonly fate: string; readonly place: number; readonly path: string; readonly bands: readonly string[]; readonly label: PlacedText }[];
}

/** Steps of the share that met each fate, with their bands; a pure function of the shares and the size. Fates that took no colony have no line. */
export function incidenceGeometry(incidence: Incidence, { origin, last, width, height = 150, names }: IncidenceOptions): IncidenceGeometry {
  const shown = incidence.fates.map((fate, at) => ({ ...fate, place: at + 1 })).filter(({ colonies }) => colonies > 0);
  const left = 32;
  const right = width - Math.max(60, ...shown.map(({ fate }) => textWidth(names[fate]) + 16));
  const top = 10;
  const bottom = top + height;
  const highest = Math.max(0.1, ...shown.flatMap(({ share, high }) => [...share, ...high.map((one) => one ?? 0)]));
  const end = Math.min(1, Math.ceil(highest * 10 - 1e-9) / 10);
  const x = linearScale([0, Math.max(1, last)], [left, right]);
  const y = linearScale([0, end], [bottom, top]);
  const ticks = origin === null ? niceTicks(0, last, 6).map((at) => ({ at, labelAt: at, label: String(at) })) : monthTicks(origin, last);
  const ends = shown.map(({ share }) => y(share.at(-1) ?? 0));
  const places = spread(ends, textSize + 3, top + 4, bottom - 2);
  return {
    width, height: bottom + 28, left, right, top, bottom,
    yTicks: niceTicks(0, end, 4).map((share) => ({ y: px(y(share)), label: String(Math.round(share * 100)) })),
    xTicks: ticks.map(({ at }) => px(x(at))),
    xLabels: ticks.map(({ labelAt, label }) => ({ x: px(x(labelAt)), y: bottom + 18, text: label, anchor: 'middle' as const })),
    lines: shown.map(({ fate, place, share, low, high }, at) => ({
      fate, place,
      path: steps(incidence.times, share, last, x, y),
      bands: bands(incidence.times, low, high, last, x, y),
      label: { x: px(right + 8), y: px((places[at] ?? bottom) + 4), text: names[fate], anchor: 'start' as const },
    })),
  };
}

type Scale = (value: number) => number;

function steps(times: readonly number[], share: readonly number[], last: number, x: Scale, y: Scale): string {
  let path = `M${px(x(0))} ${px(y(0))}`;
  let before = 0;
  times.forEach((time, at) => {
    const now = share[at] ?? before;
    if (now === before) return;
    path += `H${px(x(time))}V${px(y(now))}`;
    before = now;
  });
  return `${path}H${px(x(last))}`;
}

/** One closed shape from the first day with limits on. */
function bands(times: readonly number[], low: readonly (number | null)[], high: readonly (number | null)[], last: number, x: Scale, y: Scale): string[] {
  const first = low.findIndex((one) => one !== null);
  if (first < 0) return [];
  let upper = '';
  let lower = '';
  for (let at = first; at < times.length; at += 1) {
    const [from, to] = [px(x(times[at] ?? 0)), px(x(times[at + 1] ?? last))];
    const [below, above] = [px(y(low[at] ?? 0)), px(y(high[at] ?? 0))];
    upper = upper === '' ? `M${from} ${above}H${to}` : `${upper}V${above}H${to}`;
    lower = `V${below}H${from}${lower}`;
  }
  return [`${upper}${lower}Z`];
}
