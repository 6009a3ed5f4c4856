import { dayText, fixed } from '../parts/format.ts';
import './mites.css';
import { miteGeometry, type MitePictureFacts } from './miteGeometry.ts';
import { fitted, textWidth } from './text.ts';
import { words } from './words.ts';

/** Mite counts of a season with their ranges, the threshold, and treatments below. */
export function MiteChart({ facts, width, name }: { readonly facts: MitePictureFacts; readonly width: number; readonly name: string }) {
  const picture = miteGeometry(facts, width);
  const { left, right, top, bottom } = picture;
  return (
    <svg className="chart" role="img" aria-label={words.mitesAlt(name, facts.counts.length, facts.treatments.length)} width={picture.width} height={picture.height} viewBox={`0 0 ${picture.width} ${picture.height}`}>
      {picture.ticks.map(({ y, label }) => (
        <g key={label}>
          <line className={label === '0' ? 'chart-axis' : 'chart-grid'} x1={left} x2={right} y1={y} y2={y} />
          <text className="chart-quiet" x={left - 6} y={y + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      {picture.months.map(({ x, labelX, label }) => (
        <g key={label}>
          <line className="chart-axis" x1={x} x2={x} y1={bottom} y2={bottom + 4} />
          <text className="chart-quiet" x={labelX} y={bottom + 17} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      <path className="mite-threshold" d={picture.threshold} />
      <line className="mite-today" x1={picture.today} x2={picture.today} y1={top} y2={bottom} />
      {picture.counts.map(({ x, y, low, high, cut, title }, index) => (
        <g key={`${x} ${index}`}>
          <title>{title}</title>
          <path className="mite-range" d={`M${x} ${low}V${high}${cut ? 'm-3 4l3 -4l3 4' : ''}`} />
          <circle className="interval-mark" cx={x} cy={y} r={3.5} />
        </g>
      ))}
      {picture.treatments.map(({ x, to, label, title }, index) => {
        const bar = Math.max(6, to - x);
        const outside = x + bar + 4 + textWidth(label) < right;
        return (
          <g key={`${x} ${index}`}>
            <title>{title}</title>
            <rect className="strip-treated" x={Math.min(x, right - bar)} y={bottom + 28} width={bar} height={9} />
            <text x={outside ? x + bar + 4 : x - 4} y={bottom + 37} textAnchor={outside ? 'start' : 'end'}>
              {fitted(label, 120)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** The same in figures. */
export function MiteCountsTable({ facts, caption }: { readonly facts: MitePictureFacts; readonly caption: string }) {
  return (
    <table className="tight narrow">
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{words.day}</th>
          <th scope="col">{words.colony}</th>
          <th scope="col" className="number">
            {words.mitesFound}
          </th>
          <th scope="col" className="number">
            {words.beesSampled}
          </th>
          <th scope="col" className="number">
            {words.per100}
          </th>
          <th scope="col" className="number">
            {words.plausible}
          </th>
        </tr>
      </thead>
      <tbody>
        {facts.counts.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)).map(({ id, day, label, mites, bees, rate }, index) => (
          <tr key={`${id} ${day} ${index}`}>
            <th scope="row">{dayText(day)}</th>
            <td>{label}</td>
            <td className="number">{mites}</td>
            <td className="number">{bees}</td>
            <td className="number">{fixed(rate.per100, 1)}</td>
            <td className="number">{`${fixed(rate.limits[0], 1)}–${fixed(rate.limits[1], 1)}`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
