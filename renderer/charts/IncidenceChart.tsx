import type { Incidence } from '#shared/contract/lossSections.ts';
import { addDays, type Day } from '#shared/days.ts';
import { dayShort, missing, number } from '../parts/format.ts';
import { incidenceGeometry, type IncidenceOptions } from './incidenceGeometry.ts';
import { seriesStyle } from './series.ts';
import { words } from './words.ts';

/** Shares lost, sold and united over time as steps with their bands, named at their ends. */
export function IncidenceChart({ incidence, ...options }: Omit<IncidenceOptions, 'names'> & { readonly incidence: Incidence }) {
  const picture = incidenceGeometry(incidence, { ...options, names: words.fates });
  const { left, right, top, bottom } = picture;
  return (
    <svg className="chart" role="img" aria-label={words.incidenceAlt(picture.lines.map(({ label }) => label.text))} width={picture.width} height={picture.height} viewBox={`0 0 ${picture.width} ${picture.height}`}>
      {picture.yTicks.map(({ y, label }) => (
        <g key={label}>
          <line className={label === '0' ? 'chart-axis' : 'chart-grid'} x1={left} x2={right} y1={y} y2={y} />
          <text className="chart-quiet" x={left - 6} y={y + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      {picture.xTicks.map((x) => (
        <line key={x} className="chart-axis" x1={x} x2={x} y1={bottom} y2={bottom + 4} />
      ))}
      {picture.xLabels.map(({ x, y, text }) => (
        <text key={x} className="chart-quiet" x={x} y={y} textAnchor="middle">
          {text}
        </text>
      ))}
      {picture.lines.map(({ fate, place, path, bands, label }) => {
        const { stroke, text, dash } = seriesStyle(place);
        return (
          <g key={fate} style={{ color: stroke }}>
            {bands.map((band) => (
              <path key={band} className="chart-band" d={band} strokeDasharray={dash ?? undefined} />
            ))}
            <path className="chart-line" d={path} strokeDasharray={dash ?? undefined} />
            <text className="chart-name" style={{ fill: text }} x={label.x} y={label.y}>
              {label.text}
            </text>
          </g>
        );
      })}
      <line className="chart-axis" x1={left} x2={left} y1={top} y2={bottom} />
    </svg>
  );
}

/** The same in figures: one row for each day on which a colony left. */
export function IncidenceTable({ incidence, origin, caption }: { readonly incidence: Incidence; readonly origin: Day | null; readonly caption: string }) {
  const share = (value: number | undefined, low: number | null | undefined, high: number | null | undefined) => {
    if (value === undefined) return missing;
    const range = low === null || low === undefined || high === null || high === undefined ? '' : ` (${number(low * 100)}–${number(high * 100)})`;
    return `${number(value * 100)}${range}`;
  };
  return (
    <table className="tight">
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{words.day}</th>
          <th scope="col" className="number">
            {words.atRisk}
          </th>
          {incidence.fates.map(({ fate }) => (
            <th key={fate} scope="col" className="number">
              {words.fates[fate]} %
            </th>
          ))}
          <th scope="col" className="number">
            {words.alive}
          </th>
        </tr>
      </thead>
      <tbody>
        {incidence.times.map((time, at) => (
          <tr key={time}>
            <th scope="row">{origin === null ? number(time) : dayShort(addDays(origin, Math.floor(time)))}</th>
            <td className="number">{number(incidence.atRisk[at])}</td>
            {incidence.fates.map(({ fate, share: shares, low, high }) => (
              <td key={fate} className="number">
                {share(shares[at], low[at], high[at])}
              </td>
            ))}
            <td className="number">{number((incidence.alive[at] ?? 0) * 100)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
