import { survivorGeometry, type SurvivorData } from './survivorGeometry.ts';
import { words } from './words.ts';

/** Chances of each number of survivors; bars inside the 80 % range are full, the others hollow; the target is a dashed line. */
export function SurvivorBars({ data, width, height }: { data: SurvivorData; width: number; height?: number }) {
  const picture = survivorGeometry(data, width, height);
  const { bottom, range, target } = picture;
  return (
    <svg
      className="chart"
      role="img"
      aria-label={words.survivorsAlt(data.low, data.high, data.target)}
      width={picture.width}
      height={picture.height}
      viewBox={`0 0 ${picture.width} ${picture.height}`}
    >
      {picture.bars.map((bar) => (
        <rect
          key={bar.survivors}
          className={bar.inside ? 'survivor-bar' : 'survivor-bar survivor-bar-outside'}
          x={bar.x}
          y={bar.y}
          width={bar.width}
          height={bar.height}
        />
      ))}
      <line className="chart-axis" x1={picture.left} x2={picture.right} y1={bottom} y2={bottom} />
      {picture.ticks.map(({ x, label }) => (
        <g key={label}>
          <line className="chart-axis" x1={x} x2={x} y1={bottom} y2={bottom + 4} />
          <text className="chart-quiet" x={x} y={bottom + 18} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      <text className="chart-quiet" x={picture.left} y={bottom + 36}>
        {words.survivorsAxis}
      </text>
      <line className="survivor-target" x1={target.x} x2={target.x} y1={target.y + 3} y2={bottom} strokeDasharray="5 3" />
      <path className="survivor-range" d={`M${range.from} ${range.y + 4}v-4H${range.to}v4`} />
      <text className="chart-count survivor-range-name" x={range.label.x} y={range.y - 5} textAnchor="middle">
        {range.label.text}
      </text>
      <text className="chart-name survivor-target-name" x={target.label.x} y={target.y - 1} textAnchor="middle">
        {target.label.text}
      </text>
    </svg>
  );
}
