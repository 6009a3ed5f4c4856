import { linearScale, niceTicks, px } from './scale.ts';
import { textWidth } from './text.ts';

/** A point of a cost curve; a cost of null could not be reached. */
export interface CostPoint {
  readonly at: number;
  readonly cash: number | null;
  readonly total: number | null;
}

export interface CostCurveOptions {
  readonly points: readonly CostPoint[];
  /** The one that was asked for. */
  readonly chosen: number;
  readonly names: { readonly cash: string; readonly total: string; readonly chosen: string };
  readonly width: number;
  readonly height?: number;
}

export interface CostGeometry {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly yTicks: readonly { readonly y: number; readonly label: string }[];
  readonly xTicks: readonly { readonly x: number; readonly label: string }[];
  readonly lines: readonly { readonly name: 'cash' | 'total'; readonly path: string; readonly dots: readonly { readonly x: number; readonly y: number }[]; readonly label: { readonly x: number; readonly y: number; readonly text: string } | null }[];
  readonly chosen: { readonly x: number; readonly label: { readonly x: number; readonly text: string } };
}

/** Cost in money (minor units) over confidence or target, from 0; the names stand at the lines' ends. A pure function of points and size. */
export function costGeometry({ points, chosen, names, width, height = 170 }: CostCurveOptions): CostGeometry {
  const ordered = points.toSorted((a, b) => a.at - b.at);
  const left = 58;
  const right = width - Math.max(textWidth(names.cash), textWidth(names.total)) - 12;
  const top = 26;
  const bottom = top + height;
  const places = [...ordered.map(({ at }) => at), chosen];
  const [first, last] = [Math.min(...places), Math.max(...places)];
  const highest = Math.max(100, ...ordered.flatMap(({ cash, total }) => [cash ?? 0, total ?? 0]));
  const x = linearScale([first, last > first ? last : first + 1], [left, right]);
  const y = linearScale([0, highest], [bottom, top]);
  const text = (value: number) => value.toLocaleString('en-US');
  const line = (name: 'cash' | 'total') => {
    const dots = ordered.flatMap((point) => (point[name] === null ? [] : [{ x: px(x(point.at)), y: px(y(point[name])) }]));
    return { name, dots, path: dots.map((dot, at) => `${at === 0 ? 'M' : 'L'}${dot.x} ${dot.y}`).join(''), label: null };
  };
  const lines = [line('total'), line('cash')].map((one) => ({ ...one, end: one.dots.at(-1) })).map(({ end, ...one }, at, both) => {
    // Two ends close together: the upper name up, the lower one down.
    const other = both[1 - at]?.dots.at(-1);
    const near = end !== undefined && other !== undefined && Math.abs(end.y - other.y) < 16;
    return { ...one, label: end === undefined ? null : { x: end.x + 8, y: px(end.y + 4 + (near ? (at === 0 ? -8 : 8) : 0)), text: names[one.name] } };
  });
  const half = textWidth(names.chosen) / 2;
  return {
    width, height: bottom + 24, left, right, top, bottom, lines,
    yTicks: niceTicks(0, highest / 100, 4).map((value) => ({ y: px(y(value * 100)), label: text(value) })),
    xTicks: niceTicks(first, last, Math.max(2, Math.min(7, Math.floor((right - left) / 56)))).filter(Number.isInteger).map((value) => ({ x: px(x(value)), label: text(value) })),
    chosen: { x: px(x(chosen)), label: { x: px(Math.max(left + half, Math.min(x(chosen), width - half - 2))), text: names.chosen } },
  };
}
