import type { ColonyStrip } from '#shared/contract/strip.ts';
import { seasonName } from '#shared/seasons.ts';
import { seriesStyle } from './series.ts';
import { stripGeometry, type StripGeometry, type StripMarkPlace, type StripSeason } from './stripGeometry.ts';
import { words } from './words.ts';

export interface SeasonStripProps {
  readonly strip: ColonyStrip;
  readonly season: StripSeason;
  readonly width: number;
  /** Pounds in the book's unit, with its name. */
  readonly honeyText: (pounds: number) => string;
}

/**
 * One season of a colony on one time axis: strengths as lines between looks, mite counts as dots with their
 * 95 % interval, supers as steps, and rows of what was done. The days before it began and after it ended are shaded.
 */
export function SeasonStrip({ strip, season, width, honeyText }: SeasonStripProps) {
  const picture = stripGeometry(strip, season, width, honeyText);
  const { left, right, top, bottom, life } = picture;
  return (
    <svg className="chart strip" role="img" aria-label={words.stripAlt(seasonName(season.season))} width={picture.width} height={picture.height} viewBox={`0 0 ${picture.width} ${picture.height}`}>
      {life.from > left ? <rect className="strip-away" x={left} y={top} width={life.from - left} height={bottom - top} /> : null}
      {life.to < right ? <rect className="strip-away" x={life.to} y={top} width={right - life.to} height={bottom - top} /> : null}
      {picture.months.map(({ x, labelX, label }) => (
        <g key={x}>
          <line className="chart-grid" x1={x} x2={x} y1={top} y2={bottom} />
          <text className="chart-quiet" x={labelX} y={bottom + 18} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      {picture.winterX === null ? null : <line className="strip-winter" x1={picture.winterX} x2={picture.winterX} y1={top} y2={bottom} />}
      {life.ended ? <line className="strip-end" x1={life.to} x2={life.to} y1={top} y2={bottom} /> : null}
      <Axis picture={picture} lane={picture.frames} />
      {picture.frames.lines.map(({ key, place, path, points, label }) => {
        const { stroke, text, dash } = seriesStyle(place);
        return (
          <g key={key} style={{ color: stroke }}>
            <path className="chart-line" d={path} strokeDasharray={dash ?? undefined} />
            {points.map(({ x, y }, index) => (
              <circle key={`${x} ${index}`} className="strip-dot" cx={x} cy={y} r={2.5} />
            ))}
            {label === null ? null : (
              <text className="chart-name" x={label.x} y={label.y} style={{ color: text }}>
                {words[key]}
              </text>
            )}
          </g>
        );
      })}
      <Axis picture={picture} lane={picture.mites} />
      {picture.mites.counts.map(({ x, y, high, low, cut, title }, index) => (
        <g key={`${x} ${index}`}>
          <title>{title}</title>
          <path className="interval-line" d={`M${x} ${low}V${high}${cut ? `m-3 4l3 -4l3 4` : ''}`} />
          <circle className="interval-mark" cx={x} cy={y} r={4} />
        </g>
      ))}
      <Axis picture={picture} lane={picture.supers} />
      {picture.supers.path === '' ? null : <path className="strip-supers" d={picture.supers.path} />}
      {picture.supers.labels.map(({ x, y, text }) => (
        <text key={x} x={x} y={y}>
          {text}
        </text>
      ))}
      {picture.rows.map(({ key, name, y, marks }) => (
        <g key={key}>
          <text className="chart-quiet" x={8} y={y + 4}>
            {name}
          </text>
          <line className="chart-grid" x1={left} x2={right} y1={y + 11} y2={y + 11} />
          {marks.map((mark, index) => (
            <Mark key={`${mark.x} ${index}`} row={key} y={y} mark={mark} />
          ))}
        </g>
      ))}
    </svg>
  );
}

function Axis({ picture: { left, right }, lane }: { readonly picture: StripGeometry; readonly lane: StripGeometry['frames' | 'mites' | 'supers'] }) {
  return (
    <g>
      <text className="chart-quiet" x={8} y={(lane.top + lane.bottom) / 2 + 4}>
        {lane.name}
      </text>
      {lane.ticks.map(({ y, label }) => (
        <g key={label}>
          <line className="chart-grid" x1={left} x2={right} y1={y} y2={y} />
          <text className="chart-quiet" x={left - 6} y={y + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      <line className="chart-axis" x1={left} x2={right} y1={lane.bottom} y2={lane.bottom} />
    </g>
  );
}

/** Shape and row tell the kinds apart, not colour alone. */
function Mark({ row, y, mark }: { readonly row: StripGeometry['rows'][number]['key']; readonly y: number; readonly mark: StripMarkPlace }) {
  const { x, to, title, queen, label } = mark;
  return (
    <g>
      <title>{title}</title>
      {row === 'queens' ? <circle className={`strip-queen${queen?.colour ? ` strip-queen-${queen.colour}` : ''}`} cx={x} cy={y} r={5} /> : null}
      {row === 'treatments' ? <rect className="strip-treated" x={x - 3} y={y - 4} width={Math.max(6, to - x + 3)} height={8} /> : null}
      {row === 'feeds' ? <path className="strip-fed" d={`M${x - 5} ${y + 5}h10l-5 -10z`} /> : null}
      {row === 'honey' ? <path className="strip-honey" d={`M${x} ${y - 6}l6 6l-6 6l-6 -6z`} /> : null}
      {label === undefined ? null : (
        <text x={x + 9} y={y + 4}>
          {label}
        </text>
      )}
    </g>
  );
}
