import { useVirtualizer } from '@tanstack/react-virtual';
import { useCallback, useId, useMemo, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import type { ColonyId } from '#shared/brands.ts';
import type { LinesPicture } from '#shared/contract/lines.ts';
import { FamilyHead, FamilyLanes } from '../../charts/FamilyChart.tsx';
import { familyGeometry, headHeight, laneHeight, type PlacedLane } from '../../charts/familyGeometry.ts';
import { useWidth } from '../../charts/useWidth.ts';
import { MarginContent, useMarginNote } from '../../parts/Margin.tsx';
import { LaneNote } from './LaneNote.tsx';
import { words } from './words.ts';

export interface LanePictureProps {
  readonly picture: LinesPicture;
  readonly season: number | null;
  readonly onOpen: (id: ColonyId) => void;
  /** Null where one line is shown already. */
  readonly onFamily: ((family: ColonyId) => void) | null;
}

/** Lanes that are in sight, with as many again at hand; one is focused, and the margin tells of it. */
export function LanePicture({ picture, season, onOpen, onFamily }: LanePictureProps) {
  const [box, width] = useWidth(560, 1100);
  const scroll = useRef<HTMLDivElement>(null);
  const [chosen, setChosen] = useState(0);
  const name = useId();
  const note = useMarginNote();
  // Lanes that scroll away below a resting pointer are not pointed at.
  const byKeys = useRef(false);
  const count = picture.lanes.length;
  const active = Math.min(chosen, count - 1);
  const drawn = useMemo(() => familyGeometry(picture, season, width), [picture, season, width]);
  const rows = useVirtualizer({
    count, getScrollElement: () => scroll.current, estimateSize: () => laneHeight, overscan: 14, scrollPaddingStart: headHeight, paddingStart: headHeight,
    // Enough to draw before the box has been measured.
    initialRect: { width, height: 600 },
  }).getVirtualItems();
  const first = rows[0]?.index ?? 0;
  const last = rows.at(-1)?.index ?? 0;

  const toSight = (row: number) => {
    const element = scroll.current;
    if (element === null) return;
    const top = row * laneHeight;
    if (top < element.scrollTop) element.scrollTop = top;
    else if (headHeight + top + laneHeight > element.scrollTop + element.clientHeight) element.scrollTop = headHeight + top + laneHeight - element.clientHeight;
  };
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === 'Enter') {
      const lane = picture.lanes[active];
      if (lane !== undefined) onOpen(lane.id);
      return;
    }
    const page = Math.max(1, Math.floor(((scroll.current?.clientHeight ?? 0) - headHeight) / laneHeight) - 1);
    const steps: Record<string, number> = { ArrowDown: 1, ArrowUp: -1, PageDown: page, PageUp: -page, Home: -count, End: count };
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    byKeys.current = true;
    note(null).onMouseLeave(undefined as never);
    const next = Math.max(0, Math.min(count - 1, active + step));
    setChosen(next);
    toSight(next);
  };

  const wrap = useCallback(
    ({ lane, row }: PlacedLane, parts: ReactNode) => {
      const { onMouseEnter, onMouseLeave } = note(() => <LaneNote lane={lane} picture={picture} onFamily={onFamily} />);
      return (
        <g
          id={`${name}${row}`}
          className="lines-lane"
          role="option"
          aria-selected={row === active}
          aria-setsize={picture.laneCount}
          aria-posinset={row + 1}
          onMouseEnter={(event) => {
            if (!byKeys.current) onMouseEnter(event);
          }}
          onMouseLeave={onMouseLeave}
          onClick={() => setChosen(row)}
          onDoubleClick={() => onOpen(lane.id)}
        >
          <title>{`${lane.label}. ${lane.sentence}`}</title>
          {parts}
        </g>
      );
    },
    [note, picture, onFamily, onOpen, name, active],
  );

  const lane = picture.lanes[active];
  return (
    <div ref={box} className="lines-picture">
      <div
        ref={scroll}
        className="lines-scroll"
        role="listbox"
        tabIndex={0}
        aria-label={words.picture}
        aria-describedby={`${name}keys`}
        aria-activedescendant={active >= first && active <= last ? `${name}${active}` : undefined}
        onKeyDown={onKeyDown}
        onMouseMove={(event) => {
          if (event.movementX !== 0 || event.movementY !== 0) byKeys.current = false;
        }}
      >
        <div className="lines-head" role="presentation">
          <FamilyHead picture={drawn} />
        </div>
        <div className="lines-room" role="presentation" style={{ height: drawn.height }}>
          <svg
            className="chart family"
            role="presentation"
            style={{ top: first * laneHeight }}
            width={width}
            height={(last - first + 1) * laneHeight}
            viewBox={`0 ${first * laneHeight} ${width} ${(last - first + 1) * laneHeight}`}
          >
            <FamilyLanes picture={drawn} first={first} last={last} active={active} wrap={wrap} />
          </svg>
        </div>
      </div>
      <p className="lines-legend">{words.legend.join('; ')}.</p>
      <p className="lines-legend" id={`${name}keys`}>
        {words.pictureKeys}
      </p>
      {lane === undefined ? null : (
        <MarginContent heading={lane.label}>
          <LaneNote lane={lane} picture={picture} onFamily={onFamily} headed={false} />
        </MarginContent>
      )}
    </div>
  );
}
