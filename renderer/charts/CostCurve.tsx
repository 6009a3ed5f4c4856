import { costGeometry, type CostCurveOptions } from './costGeometry.ts';
import { seriesStyle } from './series.ts';

/** Cost against confidence or target: paid money and everything together, each point an order of its own. */
export function CostCurve({ alt, axis, ...options }: CostCurveOptions & { readonly alt: string; readonly axis: string }) {
  const picture = costGeometry(options);
  const { left, right, bottom, top, chosen } = picture;
  return (
    <svg className="chart" role="img" aria-label={alt} width={picture.width} height={picture.height + 18} viewBox={`0 0 ${picture.width} ${picture.height + 18}`}>
      {picture.yTicks.map(({ y, label }) => (
        <g key={label}>
          <line className={label === '0' ? 'chart-axis' : 'chart-grid'} x1={left} x2={right} y1={y} y2={y} />
          <text className="chart-quiet" x={left - 6} y={y + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      {picture.xTicks.map(({ x, label }) => (
        <g key={label}>
          <line className="chart-axis" x1={x} x2={x} y1={bottom} y2={bottom + 4} />
          <text className="chart-quiet" x={x} y={bottom + 18} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      <text className="chart-quiet" x={left} y={bottom + 36}>
        {axis}
      </text>
      <line className="survivor-target" x1={chosen.x} x2={chosen.x} y1={top - 6} y2={bottom} strokeDasharray="5 3" />
      <text className="chart-name survivor-target-name" x={chosen.label.x} y={top - 11} textAnchor="middle">
        {chosen.label.text}
      </text>
      {picture.lines.map(({ name, path, dots, label }, at) => {
        const { stroke, text, dash } = seriesStyle(at + 1);
        return (
          <g key={name} style={{ color: stroke }}>
            <path className="chart-line" d={path} strokeDasharray={dash ?? undefined} />
            {dots.map(({ x, y }) => (
              <circle key={x} cx={x} cy={y} r={3} fill="currentColor" />
            ))}
            {label === null ? null : (
              <text className="chart-name" style={{ fill: text }} x={label.x} y={label.y}>
                {label.text}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
