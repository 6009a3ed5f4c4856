import { useEffect, useState } from 'react';
import type { RoundRow } from '#shared/contract/journal.ts';
import type { PlannedSheet } from '#shared/contract/trips.ts';
import type { Marks } from '#shared/roundMarks.ts';
import { useRead } from '../../desk/useDesk.ts';
import { number } from '../../parts/format.ts';
import { MarginContent, MarginPart } from '../../parts/Margin.tsx';
import { QueenMark } from '../../parts/QueenMark.tsx';
import type { ColumnKey } from './sheetColumns.ts';
import { words } from './words.ts';

/** Moving quickly over the sheet asks the desk for nothing; resting on a colony does. */
const rest = 200;

interface RoundMarginProps {
  readonly row: RoundRow | null;
  readonly column: ColumnKey;
  readonly marks: Marks;
  readonly planned: PlannedSheet | null;
  /** What the record says to look for. */
  readonly cues: readonly string[];
}

/** What the margin tells of the cell the keyboard is in. */
export function RoundMargin({ row, column, marks, planned, cues }: RoundMarginProps) {
  if (row === null) {
    return (
      <MarginContent heading={words.margin.keys}>
        <p>{words.margin.rest}</p>
        <p>{words.margin.keyList}</p>
        <Planned planned={planned} />
      </MarginContent>
    );
  }
  return (
    <MarginContent heading={words.cellName(row.label, words.names[column])}>
      <p className="sentence">{words.meaning[column]}</p>
      <p>{words.marks[column](marks)}</p>
      <div className="round-margin">
        <MarginPart heading={words.queen}>
          <QueenLine row={row} />
        </MarginPart>
        {row.already.length > 0 ? (
          <MarginPart heading={words.already.title}>
            {row.already.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </MarginPart>
        ) : null}
        {cues.length > 0 ? (
          <MarginPart heading={words.margin.cues}>
            {cues.map((cue) => (
              <p key={cue}>{cue}</p>
            ))}
          </MarginPart>
        ) : null}
        <Planned planned={planned} />
        <MarginPart heading={words.margin.lastLook}>
          {row.lastLook ? <p>{words.margin.look(row.lastLook.day, row.lastLook.sentence)}</p> : <p className="soft">{words.margin.noLook}</p>}
        </MarginPart>
        <MarginPart heading={words.margin.lastMites}>
          <MitesLine row={row} />
        </MarginPart>
        <MarginPart heading={words.margin.keys}>
          <p className="soft">{words.margin.keyList}</p>
        </MarginPart>
      </div>
    </MarginContent>
  );
}

/** The work that the trip sheet of the day has for this yard. */
function Planned({ planned }: { readonly planned: PlannedSheet | null }) {
  if (planned === null) return null;
  return (
    <MarginPart heading={words.margin.planned}>
      {planned.works.map(({ what }) => (
        <p key={what.join()}>{what.join('; ')}.</p>
      ))}
    </MarginPart>
  );
}

function QueenLine({ row }: { readonly row: RoundRow }) {
  if (row.queen === null) return <p className="soft">{words.margin.noQueen}</p>;
  return (
    <p>
      <QueenMark queen={row.queen} />
      {words.margin.queen(row.queen.source, row.queen.marked, row.queen.since)}
    </p>
  );
}

function MitesLine({ row }: { readonly row: RoundRow }) {
  const settled = useSettled(row.colony);
  const story = useRead('colony.story', { id: settled }, { enabled: row.lastMites !== null });
  if (row.lastMites === null) return <p className="soft">{words.margin.noMites}</p>;
  const { day, mites, bees, per100 } = row.lastMites;
  const counted = settled === row.colony ? story.data?.miteCounts.findLast((count) => count.day === day && count.mites === mites && count.bees === bees) : undefined;
  return (
    <>
      <p>{words.margin.mites(day, mites, bees, number(per100, 1))}</p>
      {counted ? <p>{words.margin.range(number(counted.range[0], 1), number(counted.range[1], 1))}</p> : null}
    </>
  );
}

function useSettled<Value>(value: Value): Value {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), rest);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}
