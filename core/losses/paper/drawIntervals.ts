import type { PaperDrawing, PaperMark } from '#shared/contract/paper.ts';
import { cut } from './drawFrame.ts';

/** More lines than this are longer than a page; the table says them. */
const mostLines = 36;

export interface IntervalLine {
  readonly label: string;
  /** What stands beside its interval. */
  readonly counts: string;
  readonly rate: number | null;
  readonly interval: readonly [number, number] | null;
  /** Stands for all the others. */
  readonly all: boolean;
}

const left = 156;
const right = 440;
const rowHeight = 20;

/** Rates as dots on their 95 % intervals, from nought; a line that has none says so. */
export function drawIntervals(name: string, lines: readonly IntervalLine[], unit = '% lost'): PaperDrawing {
  const marks: PaperMark[] = [];
  const most = Math.max(0.1, ...lines.map(({ rate, interval }) => interval?.[1] ?? rate ?? 0));
  const end = Math.min(1, Math.ceil(most * 10) / 10);
  const x = (share: number) => Math.round((left + (Math.min(share, end) / end) * (right - left)) * 10) / 10;
  const bottom = lines.length * rowHeight + 10;
  const step = end > 0.5 ? 0.2 : 0.1;
  for (let at = 0; at * step <= end + 1e-9; at += 1) {
    marks.push({ tag: 'path', d: `M${x(at * step)} 4V${bottom}`, look: at === 0 ? 'axis' : 'grid' }, { tag: 'text', x: x(at * step), y: bottom + 15, text: String(Math.round(at * step * 100)), anchor: 'middle', look: 'label' });
  }
  marks.push({ tag: 'text', x: right + 12, y: bottom + 15, text: unit, anchor: 'start', look: 'label' });
  lines.forEach(({ label, counts, rate, interval, all }, at) => {
    const y = at * rowHeight + 16;
    marks.push({ tag: 'text', x: left - 10, y: y + 4, text: cut(label, 24), anchor: 'end', look: all ? 'name' : 'label' });
    if (interval !== null) marks.push({ tag: 'path', d: `M${x(interval[0])} ${y}H${x(interval[1])}`, look: 'line' });
    if (rate !== null) marks.push({ tag: 'circle', cx: x(rate), cy: y, r: all ? 5 : 4, look: all ? 'dot-all' : 'dot' });
    marks.push({ tag: 'text', x: right + 12, y: y + 4, text: rate === null ? 'none at risk' : counts, anchor: 'start', look: 'label' });
  });
  return { name: `${name}: ${lines.map(({ label, counts }) => `${label} ${counts}`).join('; ')}.`, width: 640, height: bottom + 24, marks };
}

/** Whether a picture can stand for a table: not for one rate alone, nor for more than a page holds. */
export function drawable(lines: readonly unknown[]): boolean {
  return lines.length > 1 && lines.length <= mostLines;
}

/** The same where it can stand for its table. */
export function drawRates(name: string, lines: readonly IntervalLine[], unit?: string): PaperDrawing[] {
  return drawable(lines) ? [drawIntervals(name, lines, unit)] : [];
}
