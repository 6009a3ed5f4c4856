import { useState } from 'react';
import { Link } from 'wouter';
import type { ColonyStory } from '#shared/contract/colonies.ts';
import { useBook } from '../../desk/useBook.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { EntryForm } from '../../parts/EntryForm.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { ColonySeason } from './ColonySeason.tsx';
import { DueSection } from './DueSection.tsx';
import { Descent } from './Descent.tsx';
import { StoryEntries } from './StoryEntries.tsx';
import { HoneyTable, MiteTable, QueenTable, Stays } from './StoryTables.tsx';
import { storyWords as words } from './storyWords.ts';
import { words as listWords } from './words.ts';

/** A colony's own page: where it came from, its queens, what it gave, what was seen and done. */
export function ColonyScreen({ id }: { readonly id: string }) {
  const number = Number(id);
  const known = Number.isInteger(number) && number > 0;
  const asOf = useAsOf();
  const { book, today } = useBook();
  const story = useRead('colony.story', { id: known ? number : 1 }, { enabled: known });
  const [entering, setEntering] = useState(false);

  // The answer to the stand-in id may be at hand from another page.
  if (!known || !story.data || !book || !today) {
    return (
      <Page title={listWords.title} line={!known || story.fault ? (asOf === null ? words.noSuch : '') : words.loading}>
        <FaultNote fault={story.fault} />
        <p>
          <Link href="/colonies">{words.back}</Link>
        </p>
      </Page>
    );
  }

  const { colony, sentence, queens, stays, honey, miteCounts, entries } = story.data;
  return (
    <Page
      title={words.title(colony.label)}
      line={lineOf(story.data)}
      action={
        entering ? undefined : (
          <Entering>
            <button type="button" className="main" onClick={() => setEntering(true)}>
              {words.enter}
            </button>
          </Entering>
        )
      }
    >
      {entering ? (
        <Entering>
          <EntryForm book={book} today={today} firstKind="inspection" colony={colony.label} onClose={() => setEntering(false)} />
        </Entering>
      ) : null}
      <p className="sentence">{sentence}</p>
      {colony.how === 'alive' || colony.how === 'lost' ? (
        <p>
          <Link href={`/colonies/${colony.id}/dead-out`}>{words.deadOut[colony.how]}</Link>
        </p>
      ) : null}
      <ColonySeason id={colony.id} massUnit={book.massUnit} />
      <div className="pair section">
        <div className="stack">
          <QueenTable queens={queens} />
          <MiteTable counts={miteCounts} />
          <Stays stays={stays} />
        </div>
        <div className="stack">
          <Descent story={story.data} />
          <HoneyTable honey={honey} massUnit={book.massUnit} />
        </div>
      </div>
      <DueSection id={colony.id} />
      <Entering>
        <StoryEntries entries={entries} />
      </Entering>
      <p className="section">
        <Link href="/colonies">{words.back}</Link>
      </p>
      <MarginContent heading={words.marginQueen}>
        <p>{words.marginQueenText}</p>
      </MarginContent>
      {miteCounts.length > 0 ? (
        <MarginContent heading={words.marginMites}>
          <p>{words.marginMitesText(miteCounts.length)}</p>
        </MarginContent>
      ) : null}
      <MarginContent heading={words.marginHoney}>
        <p>{words.marginHoneyText}</p>
      </MarginContent>
      {entries.some((entry) => entry.struck) ? (
        <MarginContent heading={words.marginStruck}>
          <p>{words.marginStruckText}</p>
        </MarginContent>
      ) : null}
    </Page>
  );
}

function lineOf({ colony }: ColonyStory): string {
  return colony.end
    ? words.endedLine(sentenceCase(listWords.endings[colony.how]), dayText(colony.end), colony.yardName)
    : words.livingLine(colony.yardName, dayText(colony.start));
}

function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

