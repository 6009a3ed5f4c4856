import type { PaperDrawing } from '#shared/contract/paper.ts';
import type { Day } from '#shared/days.ts';
import { percent, percentRange } from '#shared/figures.ts';
import { drawFrame, drawingOf, field, stepLooks } from './drawFrame.ts';

export interface FateLine {
  readonly name: string;
  readonly colonies: number;
  readonly share: readonly number[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
}

const { right, top, bottom } = field;

/** Shares lost, sold and united over the days as rising steps, each with its share at the end. */
export function drawIncidence(name: string, fates: readonly FateLine[], times: readonly number[], origin: Day | null, last: number): PaperDrawing {
  const most = Math.min(1, Math.max(0.1, Math.ceil(Math.max(0, ...fates.flatMap(({ share }) => share)) * 10) / 10));
  const frame = drawFrame(last, most, Array.from({ length: 7 }, (_, at) => (at * last) / 6), origin, '% of colonies');
  const { marks, x, y, write } = frame;
  fates.forEach(({ name: label, colonies, share, low, high }, at) => {
    const look = stepLooks[at] ?? 'line';
    const steps = times.map((time, place) => `H${x(time)}V${y(share[place] ?? 0)}`).join('');
    marks.push({ tag: 'path', d: `M${x(0)} ${y(0)}${steps}H${x(times.at(-1) ?? 0)}`, look });
    const row = top + 24 + at * 36;
    const [from, to] = [low.at(-1) ?? null, high.at(-1) ?? null];
    marks.push({ tag: 'path', d: `M${right + 8} ${row}h30`, look });
    write(right + 44, row + 4, `${label}, ${colonies}`, 'start', 'name');
    write(right + 44, row + 18, `${percent(share.at(-1) ?? 0)}${from === null || to === null ? '' : ` ${percentRange([from, to])}`}`);
  });
  return drawingOf(name, frame, bottom + 26);
}
