import { linearScale, niceTicks, px } from './scale.ts';
import { textWidth } from './text.ts';
import { words } from './words.ts';

export interface SurvivorData {
  readonly chances: readonly { readonly survivors: number; readonly chance: number }[];
  /** The 80 % range of survivors. */
  readonly low: number;
  readonly high: number;
  readonly target: number;
}

export interface SurvivorGeometry {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly bars: readonly { survivors: number; x: number; y: number; width: number; height: number; inside: boolean }[];
  readonly range: { from: number; to: number; y: number; label: { x: number; text: string } };
  readonly target: { x: number; y: number; label: { x: number; text: string } };
  readonly ticks: readonly { x: number; label: string }[];
}

const left = 8;

/** Where the bars, the 80 % range and the target stand, in pixels. Chances below a thousandth of the highest are cut off the ends. */
export function survivorGeometry(data: SurvivorData, width: number, barHeight = 120): SurvivorGeometry {
  const right = width - 8;
  const top = 44;
  const bottom = top + barHeight;
  const highest = Math.max(0, ...data.chances.map(({ chance }) => chance));
  const shown = data.chances.filter(({ chance }) => chance > highest / 1000);
  const points = [data.low, data.high, data.target, ...shown.map(({ survivors }) => survivors)];
  const first = Math.max(-0.8, Math.min(...points) - 1);
  const last = Math.max(...points) + 1;
  const x = linearScale([first, last], [left, right]);
  const y = linearScale([0, highest || 1], [bottom, top]);
  const step = x(1) - x(0);
  const barWidth = Math.max(1, Math.min(24, step * 0.8));
  return {
    width,
    height: bottom + 42,
    left,
    right,
    top,
    bottom,
    bars: shown.map(({ survivors, chance }) => ({
      survivors,
      x: px(x(survivors) - barWidth / 2),
      y: px(y(chance)),
      width: px(barWidth),
      height: px(bottom - y(chance)),
      inside: survivors >= data.low && survivors <= data.high,
    })),
    range: {
      from: px(x(data.low) - barWidth / 2),
      to: px(x(data.high) + barWidth / 2),
      y: top - 6,
      label: inside((x(data.low) + x(data.high)) / 2, words.eightyPercent(data.low, data.high), width),
    },
    target: { x: px(x(data.target)), y: 14, label: inside(x(data.target), words.target(data.target), width) },
    ticks: niceTicks(first, last, Math.max(2, Math.min(8, Math.floor(width / 60))))
      .filter(Number.isInteger)
      .map((value) => ({ x: px(x(value)), label: String(value) })),
  };
}

/** Centre of a text, moved so that the whole of it stays in the picture. */
function inside(centre: number, text: string, width: number): { x: number; text: string } {
  const half = textWidth(text) / 2;
  return { x: px(Math.max(half + 2, Math.min(centre, width - half - 2))), text };
}
