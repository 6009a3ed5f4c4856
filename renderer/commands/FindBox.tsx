import { useEffect, useId, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import { useRead } from '../desk/useDesk.ts';
import { FaultNote } from '../parts/FaultNote.tsx';
import { number } from '../parts/format.ts';
import type { Command, CommandSetting } from './command.ts';
import { helpCommand } from './commands.ts';
import './find.css';
import { choicesFor, type Choice } from './findChoices.tsx';
import { words } from './words.ts';

interface FindBoxProps {
  readonly setting: CommandSetting;
  onRun(command: Command): void;
  onGo(address: string): void;
  onClose(): void;
}

/** The most of each group that is listed. */
const most = 8;
/** The longest text that can be searched for. */
const longest = 200;

/** One box for everything: type, choose with the arrows, Enter. A dialog of the browser's own keeps and returns the focus. */
export function FindBox({ setting, onRun, onGo, onClose }: FindBoxProps) {
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const [hurried, setHurried] = useState(false);
  const dialog = useRef<HTMLDialogElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const id = useId();

  const withBook = setting.book !== null;
  const asked = typed.trim();
  const reading = useRead('find.all', { text: asked, limit: most }, { enabled: withBook, keep: true });
  /** What the list answers; while the next answer is on its way that is still the text before. */
  const late = withBook && reading.stale;
  const groups = useMemo(() => choicesFor(asked, reading.data, setting), [asked, reading.data, setting]);
  const choices = groups.flatMap((group) => group.choices);
  const chosen = choices[Math.min(at, choices.length - 1)];

  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  useEffect(() => {
    list.current?.querySelector('[aria-selected=true]')?.scrollIntoView({ block: 'nearest' });
  }, [chosen?.key]);

  const take = (choice: Choice | undefined) => {
    if (choice === undefined) return;
    // Closed first: the focus goes back to where it was, and a page that opens takes it from there.
    dialog.current?.close();
    if ('go' in choice.act) onGo(choice.act.go);
    else onRun(choice.act.command);
  };

  // Enter before the answer to what was typed is there waits for it, so that it never opens an earlier text's line.
  const takeChosen = useRef(() => take(chosen));
  useEffect(() => {
    takeChosen.current = () => take(chosen);
  });
  useEffect(() => {
    if (!hurried || late) return;
    setHurried(false);
    takeChosen.current();
  }, [hurried, late]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing || event.ctrlKey || event.metaKey || event.altKey) return;
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0 && choices.length > 0) {
      event.preventDefault();
      setAt((Math.min(at, choices.length - 1) + step + choices.length) % choices.length);
    } else if (event.key === 'Enter') {
      event.preventDefault();
      if (late) setHurried(true);
      else take(chosen);
    }
  };

  return (
    <dialog ref={dialog} className="find-box" aria-label={words.findName} onClose={onClose} onMouseDown={(event) => event.target === dialog.current && dialog.current?.close()}>
      <div className="find-inside">
        <input
          type="text"
          role="combobox"
          aria-label={words.findName}
          aria-expanded={choices.length > 0}
          aria-controls={`${id}-list`}
          aria-autocomplete="list"
          aria-activedescendant={chosen ? `${id}-${chosen.key}` : undefined}
          placeholder={withBook ? words.placeholder : words.placeholderNoBook}
          maxLength={longest}
          autoComplete="off"
          spellCheck={false}
          dir="auto"
          value={typed}
          onChange={(event) => {
            setTyped(event.target.value);
            setAt(0);
            setHurried(false);
          }}
          onKeyDown={onKeyDown}
        />
        <FaultNote fault={reading.fault} />
        <div className="find-list" role="listbox" id={`${id}-list`} aria-label={words.results} ref={list}>
          {groups.map((group) => (
            <div key={group.name} role="group" aria-label={group.name}>
              <p className="find-group" aria-hidden="true">
                {group.name}
                {group.total > group.choices.length ? <span> {words.total(group.choices.length, number(group.total))}</span> : null}
              </p>
              {group.choices.map((choice) => (
                <div
                  key={choice.key}
                  id={`${id}-${choice.key}`}
                  role="option"
                  tabIndex={-1}
                  aria-selected={choice === chosen}
                  className="find-choice"
                  onMouseDown={(event) => event.preventDefault()}
                  onMouseUp={() => take(choice)}
                >
                  <span className="find-line">{choice.line}</span>
                  {choice.more ? <span className="find-more">{choice.more}</span> : null}
                  {choice.hint ? <kbd>{choice.hint}</kbd> : null}
                </div>
              ))}
            </div>
          ))}
        </div>
        <div role="status" className="find-says">
          {choices.length === 0 && !late && asked !== '' ? (
            <>
              <p>{words.nothing(asked)}</p>
              <p className="soft">{words.nothingMend}</p>
            </>
          ) : (
            <p className="visually-hidden">{late ? '' : words.status(choices.length)}</p>
          )}
        </div>
        <p className="find-foot">
          <span>{words.keys}</span>
          {helpCommand.enabled(setting) ? (
            <button type="button" className="link" onClick={() => take({ key: 'help', line: '', act: { command: helpCommand } })}>
              {words.help}
            </button>
          ) : null}
        </p>
      </div>
    </dialog>
  );
}
