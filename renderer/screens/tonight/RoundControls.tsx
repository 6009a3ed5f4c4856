import type { OpenBook, YardRow } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import { washMethods } from '#shared/entryForms.ts';
import { dayWithWeekday } from '../../parts/format.ts';
import { DayField } from './DayField.tsx';
import { readCell } from './sheetCell.ts';
import { draftIsEmpty, freshSheet } from './sheetDraft.ts';
import type { SheetWide } from './sheetRow.ts';
import type { Round } from './useRound.ts';
import { words } from './words.ts';

interface RoundControlsProps {
  readonly book: OpenBook;
  readonly today: Day;
  readonly yard: YardRow;
  readonly day: Day;
  readonly round: Round;
  onPick(yard: YardRow, day: Day): void;
  onDone(): void;
  onFault(sentence: string | null): void;
}

/** The line above the sheet: which yard and day, what holds for all mite counts, how far the sheet is. */
export function RoundControls({ book, today, yard, day, round, onPick, onDone, onFault }: RoundControlsProps) {
  const wide = round.draft.draft?.wide ?? freshSheet.wide;
  const sampleRefused = readCell('sample', wide.sample).state === 'refused';
  return (
    <div className="choices round-choices">
      <label className="inline-choice">
        {words.controls.yard}{' '}
        <select
          value={yard.id}
          onChange={(event) => {
            const next = book.yards.find(({ id }) => String(id) === event.target.value);
            if (next) onPick(next, day);
          }}
        >
          {book.yards.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <span>
        <DayField day={day} today={today} order={book.dateOrder} onDay={(next) => onPick(yard, next)} onDone={onDone} onFault={onFault} />{' '}
        <span aria-live="polite">{dayWithWeekday(day).split('\u00a0')[0]}</span>
      </span>
      <label className="inline-choice">
        {words.controls.sample}{' '}
        <input
          className="round-sample"
          value={wide.sample}
          inputMode="numeric"
          autoComplete="off"
          aria-invalid={sampleRefused || undefined}
          onChange={(event) => round.setWide({ sample: event.target.value })}
          onFocus={(event) => event.target.select()}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && !event.ctrlKey && !event.metaKey) onDone();
          }}
        />{' '}
        {words.controls.sampleUnit}
      </label>
      <label className="inline-choice">
        {words.controls.method}{' '}
        <select className="round-method" value={wide.method} onChange={(event) => round.setWide({ method: methodOf(event.target.value) })}>
          {(['', ...washMethods] as const).map((method) => (
            <option key={method} value={method}>
              {words.controls.methods[method]}
            </option>
          ))}
        </select>
      </label>
      <span className="push">
        {words.controls.filled(round.filled, round.rows.length)}
        <Kept round={round} />
      </span>
    </div>
  );
}

function Kept({ round }: { readonly round: Round }) {
  const { draft, kept } = round.draft;
  if (kept.is === 'failed') return <span className="needs"> · {words.controls.draftNot(kept.fault.sentence)}</span>;
  if (draft === null || draftIsEmpty(draft) || round.draft.unread) return null;
  return <span> · {kept.is === 'waiting' ? words.controls.draftWaiting : words.controls.draftKept}</span>;
}

function methodOf(value: string): SheetWide['method'] {
  return washMethods.find((method) => method === value) ?? '';
}
