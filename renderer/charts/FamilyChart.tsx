import { memo, type ReactNode } from 'react';
import { headHeight, laneHeight, linksAmong, type FamilyGeometry, type LaneMark, type PlacedLane } from './familyGeometry.ts';
import { familyWords as words } from './familyWords.ts';
import { px } from './scale.ts';

/** The axis: summers by name, winters shaded. */
export function FamilyHead({ picture }: { readonly picture: FamilyGeometry }) {
  return (
    <svg className="chart family-head" aria-hidden="true" width={picture.width} height={headHeight} viewBox={`0 0 ${picture.width} ${headHeight}`}>
      <HeadParts picture={picture} />
    </svg>
  );
}

/** Lanes from `first` to `last` with their axis, as one picture of its own. */
export function FamilySheet({ picture, first, last }: { readonly picture: FamilyGeometry; readonly first: number; readonly last: number }) {
  const height = headHeight + (last - first + 1) * laneHeight;
  return (
    <svg xmlns="http://www.w3.org/2000/svg" className="chart family" role="img" aria-label={words.alt(last - first + 1)} width={picture.width} height={height} viewBox={`0 0 ${picture.width} ${height}`}>
      <HeadParts picture={picture} />
      <svg y={headHeight} width={picture.width} height={height - headHeight} viewBox={`0 ${first * laneHeight} ${picture.width} ${height - headHeight}`}>
        <FamilyLanes picture={picture} first={first} last={last} />
      </svg>
    </svg>
  );
}

export interface FamilyLanesProps {
  readonly picture: FamilyGeometry;
  readonly first: number;
  readonly last: number;
  readonly active?: number | null;
  /** Wraps each lane, to make it a thing that can be pointed at. */
  readonly wrap?: (lane: PlacedLane, drawn: ReactNode) => ReactNode;
}

/** Some of the lanes, drawn where they stand among all, with the links that pass them. */
export function FamilyLanes({ picture, first, last, active = null, wrap }: FamilyLanesProps) {
  const [top, bottom] = [first * laneHeight, (last + 1) * laneHeight];
  const links = linksAmong(picture.links, first, last);
  return (
    <>
      {picture.winters.map(({ from, to }) => (
        <rect key={from} className="family-winter" x={from} y={top} width={px(Math.max(0, to - from))} height={bottom - top} />
      ))}
      {active === null ? null : <rect className="family-row-active" x={0} y={active * laneHeight} width={picture.width} height={laneHeight} />}
      {links.map(({ kind, key, x, fromY, toY }) => (
        <path key={key} className={`family-link family-${kind}`} d={`M${x} ${fromY}V${toY}`} />
      ))}
      {picture.lanes.slice(first, last + 1).map((placed) => {
        const drawn = <Lane placed={placed} width={picture.width} active={placed.row === active} />;
        return <g key={placed.lane.id}>{wrap === undefined ? drawn : wrap(placed, drawn)}</g>;
      })}
      {links.map(({ kind, key, x, toY }) => (kind === 'combine' ? <circle key={key} className="family-join" cx={x} cy={toY} r={4} /> : null))}
    </>
  );
}

function HeadParts({ picture }: { readonly picture: FamilyGeometry }) {
  return (
    <>
      {picture.winters.map(({ from, to }) => (
        <rect key={from} className="family-winter" x={from} y={0} width={px(Math.max(0, to - from))} height={headHeight} />
      ))}
      {picture.names.map(({ x, text }) => (
        <text key={x} className="chart-quiet" x={x} y={17} textAnchor="middle">
          {text}
        </text>
      ))}
    </>
  );
}

const Lane = memo(function Lane({ placed, width, active }: { readonly placed: PlacedLane; readonly width: number; readonly active: boolean }) {
  const { lane, row, y, from, to, began, ended, label, end, marks, founds } = placed;
  return (
    <>
      <rect className="family-row" x={0} y={row * laneHeight} width={width} height={laneHeight} />
      {founds && row > 0 ? <line className="family-rule" x1={0} x2={width} y1={row * laneHeight} y2={row * laneHeight} /> : null}
      <line className={active ? 'family-life family-life-active' : 'family-life'} x1={from} x2={Math.max(to, from + 1)} y1={y} y2={y} />
      {began ? <circle className="family-start" cx={from} cy={y} r={3} /> : null}
      {ended ? <path className={`family-end family-${lane.how}`} d={endShape(lane.how, to, y)} /> : null}
      <text className="chart-name family-text" x={label.x} y={y + 4} textAnchor="end">
        {label.text}
      </text>
      {marks.map((mark, place) => (
        <Mark key={`${mark.kind} ${mark.x} ${place}`} mark={mark} y={y} />
      ))}
      {end === null ? null : (
        <text className={`family-text family-end-text family-text-${lane.how}`} x={end.x} y={y + 4}>
          {end.text}
        </text>
      )}
    </>
  );
});

/** A queen is a circle, a move a standing square; each with its word where there is room. */
function Mark({ mark: { kind, x, title, text, colour }, y }: { readonly mark: LaneMark; readonly y: number }) {
  return (
    <g>
      <title>{title}</title>
      {kind === 'queen' ? (
        <circle className={`family-queen${colour !== null && text !== null ? ` family-queen-${colour}` : ''}`} cx={x} cy={y} r={5} />
      ) : (
        <path className="family-move" d={`M${x} ${y - 5}l5 5l-5 5l-5 -5z`} />
      )}
      {text === null ? null : (
        <text className="chart-quiet family-text" x={x + 7} y={y - 6}>
          {text}
        </text>
      )}
    </g>
  );
}

/** Lost: a bar. Sold or given away: an arrow. United: a hook up or down to the dashed line. Absconded: a slanted bar. */
function endShape(how: PlacedLane['lane']['how'], x: number, y: number): string {
  switch (how) {
    case 'lost':
      return `M${x} ${y - 7}v14`;
    case 'absconded':
      return `M${x - 4} ${y + 7}l8 -14`;
    case 'sold':
    case 'given':
      return `M${x - 1} ${y - 5}l6 5l-6 5`;
    case 'combined':
      return `M${x - 3} ${y}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0`;
    case 'alive':
      return '';
  }
}
