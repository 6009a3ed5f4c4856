import { seriesStyle } from './series.ts';
import { survivalGeometry, type PlacedText, type SurvivalLine, type SurvivalOptions } from './survivalGeometry.ts';
import { words } from './words.ts';

export interface SurvivalChartProps extends SurvivalOptions {
  readonly lines: readonly SurvivalLine[];
}

/**
 * Kaplan-Meier step curves with their bands, a tick where colonies left alive, names at the line ends and
 * the number at risk below. Groups without a colony are left out; say so beside the picture.
 */
export function SurvivalChart({ lines, ...options }: SurvivalChartProps) {
  const picture = survivalGeometry(lines, options);
  const { left, right, top, bottom } = picture;
  return (
    <svg
      className="chart"
      role="img"
      aria-label={words.survivalAlt(picture.lines.map((line) => line.fullLabel))}
      width={picture.width}
      height={picture.height}
      viewBox={`0 0 ${picture.width} ${picture.height}`}
    >
      {picture.yTicks.map(({ y, label }) => (
        <g key={label}>
          <line className={label === '0' ? 'chart-axis' : 'chart-grid'} x1={left} x2={right} y1={y} y2={y} />
          <Text className="chart-quiet" at={{ x: left - 6, y: y + 4, text: label, anchor: 'end' }} />
        </g>
      ))}
      {picture.xTicks.map(({ x }) => (
        <line key={x} className="chart-axis" x1={x} x2={x} y1={bottom} y2={bottom + 4} />
      ))}
      {picture.xLabels.map((at) => (
        <Text key={at.x} className="chart-quiet" at={at} />
      ))}
      {picture.axisTitle && <Text className="chart-quiet" at={picture.axisTitle} />}
      {picture.lines.map((line) => {
        const { stroke, dash } = seriesStyle(line.place);
        return line.bands.map((band) => (
          <path key={`${line.key} ${band}`} className={picture.lines.length > 3 ? 'chart-band chart-band-many' : 'chart-band'} d={band} strokeDasharray={dash ?? undefined} style={{ color: stroke }} />
        ));
      })}
      {picture.lines.map((line) => {
        const { stroke, text, dash } = seriesStyle(line.place);
        const moved = Math.abs(line.label.y - 4 - line.end.y) > 3 || line.end.x < line.label.x - 9;
        return (
          <g key={line.key} style={{ color: stroke }}>
            <path className="chart-line" d={line.path} strokeDasharray={dash ?? undefined} />
            {line.censored.map(({ x, y }) => (
              <line key={`${x} ${y}`} className="chart-tick" x1={x} x2={x} y1={y - 4} y2={y + 4} />
            ))}
            {moved && <line className="chart-leader" x1={line.end.x + 1} y1={line.end.y} x2={line.label.x - 2} y2={line.label.y - 4} />}
            <g style={{ color: text }}>
              <Text className="chart-name" at={line.label} title={line.fullLabel} />
              {line.strip.map((at) => (
                <Text key={at.x} className="chart-count" at={at} />
              ))}
              <Text className="chart-count" at={line.stripLabel} />
            </g>
          </g>
        );
      })}
      <Text className="chart-quiet" at={picture.stripTitle} />
      <line className="chart-axis" x1={left} x2={left} y1={top} y2={bottom} />
    </svg>
  );
}

function Text({ at, className, title }: { at: PlacedText; className: string; title?: string }) {
  return (
    <text className={className} x={at.x} y={at.y} textAnchor={at.anchor}>
      {title !== undefined && title !== at.text && <title>{title}</title>}
      {at.text}
    </text>
  );
}
