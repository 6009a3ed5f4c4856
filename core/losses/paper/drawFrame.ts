import type { PaperDrawing, PaperMark } from '#shared/contract/paper.ts';
import { addDays, dayInWords, type Day } from '#shared/days.ts';

export const stepLooks = ['line', 'line-dashed', 'line-dotted', 'line-dashdot', 'line-long'] as const;
export const field = { width: 640, left: 44, right: 470, top: 12, bottom: 176 } as const;

export interface Frame {
  readonly marks: PaperMark[];
  readonly x: (time: number) => number;
  readonly y: (share: number) => number;
  readonly write: (x: number, y: number, words: string, anchor?: 'start' | 'middle' | 'end', look?: 'label' | 'name') => void;
}

/** Axes of shares over days: per cent up to `most`, a mark at each of the days. */
export function drawFrame(last: number, most: number, ticks: readonly number[], origin: Day | null, unit: string): Frame {
  const { left, right, top, bottom } = field;
  const marks: PaperMark[] = [];
  const x = (time: number) => round(left + (Math.min(time, last) / last) * (right - left));
  const y = (share: number) => round(bottom - (share / most) * (bottom - top));
  const write: Frame['write'] = (at, down, words, anchor = 'start', look = 'label') => {
    marks.push({ tag: 'text', x: at, y: down, text: words, anchor, look });
  };
  for (const part of [0, 0.25, 0.5, 0.75, 1]) {
    marks.push({ tag: 'path', d: `M${left} ${y(part * most)}H${right}`, look: part === 0 ? 'axis' : 'grid' });
    write(left - 6, y(part * most) + 4, String(Math.round(part * most * 1000) / 10), 'end');
  }
  write(right + 8, top + 4, unit);
  for (const time of ticks) {
    marks.push({ tag: 'path', d: `M${x(time)} ${bottom}v5`, look: 'axis' });
    write(x(time), bottom + 18, origin === null ? `${Math.round(time)} d` : dayInWords(addDays(origin, Math.round(time))).split(' ').slice(0, 2).map((word) => word.slice(0, 3)).join(' '), 'middle');
  }
  return { marks, x, y, write };
}

export function drawingOf(name: string, { marks }: Frame, height: number): PaperDrawing {
  return { name, width: field.width, height, marks };
}

/** Words no longer than the room beside a drawing; the whole name stands in the table. */
export function cut(words: string, most: number): string {
  return words.length <= most ? words : `${words.slice(0, most - 1).trimEnd()}…`;
}

export function round(value: number): number {
  return Math.round(value * 10) / 10;
}
