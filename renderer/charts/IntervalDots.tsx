import { linearScale, niceTicks, px } from './scale.ts';
import { textSize } from './text.ts';
import { words } from './words.ts';

/** Rates and bounds are shares from 0 to 1, or amounts of which `alt` tells; null where the rate is undefined. */
export interface IntervalRow {
  readonly label: string;
  /** What the picture says to who does not see it, where the values are no shares. */
  readonly alt?: string;
  readonly rate: number | null;
  readonly interval: readonly [number, number] | null;
  /** Needs attention: drawn as a diamond as well as in rust. */
  readonly marked?: boolean;
}

/** End of the shared axis: the next quarter above the largest bound, at least 0.5, so that rows of one table compare. */
export function intervalEnd(rows: readonly IntervalRow[]): number {
  const largest = Math.max(0, ...rows.map((row) => row.interval?.[1] ?? row.rate ?? 0));
  return Math.min(1, Math.max(0.5, Math.ceil(largest * 4 - 1e-9) / 4));
}

/** As `intervalEnd`, for amounts: the next round tick above the largest bound. */
export function amountEnd(rows: readonly IntervalRow[]): number {
  const largest = Math.max(0, ...rows.map((row) => row.interval?.[1] ?? row.rate ?? 0));
  const ticks = niceTicks(0, largest > 0 ? largest : 1, 4);
  const step = (ticks[1] ?? 1) - (ticks[0] ?? 0);
  const last = ticks.at(-1) ?? 0;
  return last >= largest ? Math.max(last, step) : last + step;
}

const pad = 8;

function xScale(end: number, width: number) {
  return linearScale([0, end], [pad, width - pad]);
}

/** One row of the picture: the dot at the rate on the line of its interval. Sits in a table cell. */
export function IntervalDot({ row, end, width }: { row: IntervalRow; end: number; width: number }) {
  const x = xScale(end, width);
  const middle = 9;
  const percent = (share: number) => Math.round(share * 100);
  const { rate, interval } = row;
  const name =
    row.alt ?? (rate === null || interval === null ? words.noRate(row.label) : words.intervalAlt(row.label, percent(rate), percent(interval[0]), percent(interval[1])));
  return (
    <svg className="chart interval-dot" role="img" aria-label={name} width={width} height={18} viewBox={`0 0 ${width} 18`}>
      {niceTicks(0, end, 4).map((tick) => (
        <line key={tick} className="chart-grid" x1={px(x(tick))} x2={px(x(tick))} y1={0} y2={18} />
      ))}
      {interval && <line className="interval-line" x1={px(x(interval[0]))} x2={px(x(interval[1]))} y1={middle} y2={middle} />}
      {interval && <path className="interval-line" d={`M${px(x(interval[0]))} ${middle - 3}v6M${px(x(interval[1]))} ${middle - 3}v6`} />}
      {rate !== null &&
        (row.marked ? (
          <path className="interval-marked" d={`M${px(x(rate))} ${middle - 6}l6 6l-6 6l-6 -6Z`} />
        ) : (
          <circle className="interval-mark" cx={px(x(rate))} cy={middle} r={4.5} />
        ))}
    </svg>
  );
}

const inPerCent = (tick: number) => String(Math.round(tick * 100));

/** The axis above a column of `IntervalDot`s, in per cent unless told otherwise. */
export function IntervalScale({ end, width, tickText = inPerCent }: { end: number; width: number; tickText?: (tick: number) => string }) {
  const x = xScale(end, width);
  const ticks = niceTicks(0, end, 4);
  return (
    <svg className="chart" aria-hidden="true" width={width} height={textSize + 5} viewBox={`0 0 ${width} ${textSize + 5}`}>
      {ticks.map((tick, index) => (
        <text
          key={tick}
          className="chart-quiet"
          x={px(index === 0 ? x(tick) - 4 : index === ticks.length - 1 ? Math.min(x(tick) + 4, width) : x(tick))}
          y={textSize}
          textAnchor={index === 0 ? 'start' : index === ticks.length - 1 ? 'end' : 'middle'}
        >
          {tickText(tick)}
        </text>
      ))}
    </svg>
  );
}

/** A whole picture of rows, for print and for places without a table: names left, dots and intervals right. */
export function IntervalDots({ rows, width, nameWidth = 120 }: { rows: readonly IntervalRow[]; width: number; nameWidth?: number }) {
  const end = intervalEnd(rows);
  return (
    <div className="interval-dots" style={{ width }}>
      <div className="interval-dots-row">
        <span style={{ width: nameWidth }} />
        <IntervalScale end={end} width={width - nameWidth} />
      </div>
      {rows.map((row) => (
        <div className="interval-dots-row" key={row.label}>
          <span style={{ width: nameWidth }}>{row.label}</span>
          <IntervalDot row={row} end={end} width={width - nameWidth} />
        </div>
      ))}
    </div>
  );
}
