import { Link } from 'wouter';
import type { OpenBook, YardRow } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import { roundKinds } from '#shared/roundSheets.ts';
import { dayWithWeekday } from '../../parts/format.ts';
import { DayField } from './DayField.tsx';
import type { Round } from './useRound.ts';
import { words } from './words.ts';

export type Panel = 'columns' | 'marks';

interface RoundControlsProps {
  readonly book: OpenBook;
  readonly today: Day;
  readonly yard: YardRow;
  readonly day: Day;
  readonly round: Round;
  readonly panel: Panel | null;
  onPanel(panel: Panel | null): void;
  onPick(yard: YardRow, day: Day): void;
  onDone(): void;
  onFault(sentence: string | null): void;
}

/** The line above the sheet: which yard and day, which kind of round, what it asks, how far the sheet is. */
export function RoundControls({ book, today, yard, day, round, panel, onPanel, onPick, onDone, onFault }: RoundControlsProps) {
  const toggle = (which: Panel, name: string) => (
    <button type="button" className="link" aria-expanded={panel === which} onClick={() => onPanel(panel === which ? null : which)}>
      {name}
    </button>
  );
  return (
    <div className="choices round-choices">
      <label className="inline-choice">
        {words.controls.yard}{' '}
        <select
          className="round-yard"
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
        {words.controls.kind}{' '}
        <select
          value={round.kind}
          onChange={(event) => {
            const next = roundKinds.find((kind) => kind === event.target.value);
            if (next) void round.choose(next);
          }}
        >
          {roundKinds.map((kind) => (
            <option key={kind} value={kind}>
              {words.kinds[kind]}
            </option>
          ))}
        </select>
      </label>
      {toggle('columns', words.controls.columns)}
      {toggle('marks', words.controls.marks)}
      <Link href={`/print/round/${yard.id}/${day}`}>{words.controls.print}</Link>
    </div>
  );
}
