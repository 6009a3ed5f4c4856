import type { ColonyRow } from '#shared/contract/colonies.ts';
import { useRead } from '../../desk/useDesk.ts';
import { dayText, fixed, number } from '../../parts/format.ts';
import { MarginPart } from '../../parts/Margin.tsx';
import { QueenMark } from '../../parts/QueenMark.tsx';
import { per100 } from './colonyColumns.tsx';
import { words } from './words.ts';

/** What the margin says about a line of the list. */
export function ColonyNote({ row }: { readonly row: ColonyRow }) {
  const story = useRead('colony.story', { id: row.id });
  const count = story.data?.miteCounts.find(({ day }) => day === row.mitesDay);
  return (
    <>
      <MarginPart heading={`${row.label}, ${row.yardName}`}>
        {story.data ? <p className="sentence">{story.data.sentence}</p> : null}
        {row.end ? <p>{words.endedOn(words.endings[row.how], dayText(row.end), row.causes.join(', '))}</p> : null}
      </MarginPart>
      <MarginPart heading={words.lastLookHeading}>
        <p>{row.lastLook ? words.lookOn(dayText(row.lastLook), lookParts(row)) : words.neverLooked}</p>
      </MarginPart>
      <MarginPart heading={words.mitesHeading}>
        {row.mitesDay ? (
          <>
            <p>{words.mitesOn(dayText(row.mitesDay), number(row.mites), number(row.bees), fixed(per100(row), 1))}</p>
            {count ? <p className="soft">{words.mitesRange(fixed(count.range[0], 1), fixed(count.range[1], 1))}</p> : null}
          </>
        ) : (
          <p>{words.neverCounted}</p>
        )}
      </MarginPart>
      <MarginPart heading={words.queenHeading}>
        {row.queen ? (
          <>
            <p>{row.queen.year === null ? words.queenNoYear : <QueenMark queen={row.queen} />}</p>
            <p>{words.queenSince(dayText(row.queen.since), row.queen.source)}</p>
            <p className="soft">{row.queen.marked ? words.queenMarked : words.queenUnmarked}</p>
          </>
        ) : (
          <p>{words.queenNone}</p>
        )}
      </MarginPart>
    </>
  );
}

function lookParts(row: ColonyRow): string {
  return [
    row.framesBees === null ? '' : words.framesOfBees(number(row.framesBees, 1)),
    row.framesBrood === null ? '' : words.framesOfBrood(number(row.framesBrood, 1)),
    row.framesStores === null ? '' : words.framesOfStores(number(row.framesStores, 1)),
  ]
    .filter((part) => part !== '')
    .join(', ');
}
