import { useCallback, useState } from 'react';
import { Link } from 'wouter';
import type { OpenBook, YardRow } from '#shared/contract/book.ts';
import { dayFromIso, type Day } from '#shared/days.ts';
import { useBook } from '../../desk/useBook.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { Page } from '../../parts/Page.tsx';
import { RoundPage } from './RoundPage.tsx';
import type { RoundIndex } from './roundIndex.ts';
import './tonight.css';
import { useRounds } from './useRounds.ts';
import { words } from './words.ts';

interface TonightProps {
  /** The yard and day to begin with, where the address names them. */
  readonly yard?: string;
  readonly day?: string;
}

/** The evening's desk: a yard's round typed in one go. */
export function TonightScreen({ yard, day }: TonightProps) {
  const { book, today, fault } = useBook();
  if (fault || book === undefined || today === undefined) {
    return (
      <Page title={words.head.page} line={fault ? '' : words.loading}>
        <FaultNote fault={fault} />
      </Page>
    );
  }
  if (book.yards.length === 0) {
    return (
      <Page title={words.head.page} line={words.head.question}>
        <Empty
          sentence={words.empty.noYards}
          action={
            <p>
              <Link href="/colonies">{words.empty.install}</Link> {words.empty.or} <Link href="/book">{words.empty.importRecords}</Link>
            </p>
          }
        />
      </Page>
    );
  }
  const asked = dayFromIso(day ?? '');
  const named = book.yards.find(({ id }) => String(id) === yard);
  return <Rounds key={book.path} book={book} today={today} first={named === undefined || asked === null ? null : { yard: named.id, day: asked }} />;
}

function Rounds({ book, today, first }: { readonly book: OpenBook; readonly today: Day; readonly first: { yard: number; day: Day } | null }) {
  const rounds = useRounds();
  const [picked, setPicked] = useState<{ yard: number; day: Day } | null>(first);
  const onPick = useCallback((yard: YardRow, day: Day) => setPicked({ yard: yard.id, day }), []);
  if (rounds.index === null) return <Page title={words.head.page} line={words.loading} />;
  const at = picked ?? firstSheet(book, today, rounds.index);
  const yard = book.yards.find(({ id }) => id === at.yard) ?? book.yards[0];
  if (yard === undefined) return null;
  return <RoundPage book={book} today={today} yard={yard} day={at.day} rounds={rounds} onPick={onPick} />;
}

/** The sheet left open with typing on it; else today's, in the yard that was open last. */
function firstSheet(book: OpenBook, today: Day, { last, open }: RoundIndex): { yard: number; day: Day } {
  const typing = last && open.some((round) => round.yard === last.yard && round.day === last.day);
  if (typing && last.day <= today) return last;
  const yard = book.yards.find(({ id }) => id === last?.yard) ?? book.yards.find(({ living }) => living > 0) ?? book.yards[0];
  return { yard: yard?.id ?? 0, day: today };
}
