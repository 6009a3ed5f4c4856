import type { KeyboardEvent } from 'react';
import { feeds, knownIngredients, washMethods } from '#shared/entryForms.ts';
import type { RoundColumn } from '#shared/roundSheets.ts';
import { entryWords } from '../../parts/entryWords.ts';
import { readWeight } from './sheetAmounts.ts';
import { readCell } from './sheetCell.ts';
import { draftIsEmpty, freshSheet } from './sheetDraft.ts';
import { alsoDone, untilTrouble, withAlsoDone, workTrouble } from './sheetEntries.ts';
import { wideAmount, type SheetWide } from './sheetRow.ts';
import type { Round } from './useRound.ts';
import { words } from './words.ts';

interface RoundWideProps {
  readonly round: Round;
  /** Enter in a field: go on to the sheet. */
  onDone(): void;
}

/** What is the same for all colonies of the sheet, as far as its columns ask for it, the round's work, and how far the sheet is. */
export function RoundWide({ round, onDone }: RoundWideProps) {
  const wide = round.draft.draft?.wide ?? freshSheet.wide;
  const has = (column: RoundColumn) => round.columns.includes(column);
  const { setting } = round;
  // What was ticked stays in sight, whatever became of the plan.
  const yardWork = [...round.yardWork, ...alsoDone(wide.also).filter((task) => !round.yardWork.some((one) => one.task === task)).map((task) => ({ what: task, task }))];
  const wrong: Partial<Record<keyof SheetWide, boolean>> = {
    sample: readCell('sample', wide.sample, setting).state === 'refused',
    amount: wideAmount(wide, setting) === 'refused',
    tare: wide.tare.trim() !== '' && readWeight(wide.tare.trim(), setting) === null,
    until: untilTrouble(wide, round.dateOrder) !== null,
    hours: workTrouble({ ...wide, people: '', miles: '' }) !== null,
    people: workTrouble({ ...wide, hours: '1', miles: '' }) !== null,
    miles: workTrouble({ ...wide, hours: '', people: '' }) !== null,
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && !event.ctrlKey && !event.metaKey && event.target instanceof HTMLInputElement) onDone();
  };
  const field = (key: keyof SheetWide, label: string, width: string, list?: string, help?: string) => (
    <label className="inline-choice" title={help}>
      {label}{' '}
      <input
        className={width}
        value={wide[key]}
        list={list}
        autoComplete="off"
        aria-invalid={wrong[key] || undefined}
        onChange={(event) => round.setWide({ [key]: event.target.value })}
        onFocus={(event) => event.target.select()}
      />
    </label>
  );
  return (
    <div className="choices round-choices" onKeyDown={onKeyDown}>
      {has('mites') ? (
        <>
          <span>
            {field('sample', words.controls.sample, 'round-sample')} {words.controls.sampleUnit}
          </span>
          {choice(words.controls.method, ['', ...washMethods], wide.method, (method) => round.setWide({ method }))}
        </>
      ) : null}
      {has('feed') ? (
        <>
          {choice(words.controls.feed, ['', ...feeds], wide.feed, (feed) => round.setWide({ feed }))}
          {field('amount', words.controls.amount, 'round-short')}
        </>
      ) : null}
      {has('full') || has('empty') ? field('tare', words.controls.tare, 'round-short') : null}
      {has('lot') || has('full') ? field('lot', words.controls.lot, 'round-lot') : null}
      {has('treat') ? (
        <>
          {field('ingredient', words.controls.ingredient, 'round-lot', 'round-ingredients')}
          {field('until', words.controls.until, 'round-day')}
          <datalist id="round-ingredients">
            {knownIngredients.map((known) => (
              <option key={known} value={known} />
            ))}
          </datalist>
        </>
      ) : null}
      {yardWork.length === 0 ? null : (
        <span role="group" aria-label={words.controls.also}>
          {words.controls.also}:{' '}
          {yardWork.map(({ what, task }) => (
            <label key={task} className="inline-choice">
              <input type="checkbox" checked={alsoDone(wide.also).includes(task)} onChange={(event) => round.setWide({ also: withAlsoDone(wide.also, task, event.target.checked) })} /> {what}{' '}
            </label>
          ))}
        </span>
      )}
      <span className="round-work" role="group" aria-label={words.controls.work}>
        {field('hours', words.controls.hours, 'round-time', undefined, words.controls.hoursHelp)} {field('people', words.controls.people, 'round-small')} {field('miles', words.controls.miles, 'round-small')}
      </span>
      <span className="push">
        {words.controls.filled(round.filled, round.rows.length)}
        <Kept round={round} />
      </span>
      {has('treat') ? <p className="small round-caution">{entryWords.treatmentCaution}</p> : null}
    </div>
  );
}

function choice<Value extends string>(label: string, of: readonly Value[], value: Value, onChoice: (value: Value) => void) {
  return (
    <label className="inline-choice">
      {label}{' '}
      <select
        className="round-method"
        value={value}
        onChange={(event) => {
          const next = of.find((one) => one === event.target.value);
          if (next !== undefined) onChoice(next);
        }}
      >
        {of.map((one) => (
          <option key={one} value={one}>
            {one === '' ? words.controls.notSaid : one}
          </option>
        ))}
      </select>
    </label>
  );
}

function Kept({ round }: { readonly round: Round }) {
  const { draft, kept } = round.draft;
  if (kept.is === 'failed') return <span className="needs"> · {words.controls.draftNot(kept.fault.sentence)}</span>;
  if (draft === null || draftIsEmpty(draft) || round.draft.unread || round.draft.apart) return null;
  return <span> · {kept.is === 'waiting' ? words.controls.draftWaiting : words.controls.draftKept}</span>;
}
