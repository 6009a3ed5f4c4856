import { Link, useLocation } from 'wouter';
import { dayFromIso } from '#shared/days.ts';
import type { Command } from '../commands/command.ts';
import { useFinder } from '../commands/CommandsProvider.tsx';
import { findCommand, helpCommand, screenCommands } from '../commands/commands.ts';
import { shortcutText } from '../commands/shortcut.ts';
import { useBook } from '../desk/useBook.ts';
import { useQuietRead, useRead } from '../desk/useDesk.ts';
import { counted, dayTight } from './format.ts';
import { ThemeSwitch } from './ThemeSwitch.tsx';
import { words } from './words.ts';

const hint = ({ shortcut }: Command) => (shortcut ? shortcutText(shortcut) : undefined);

export function Rail() {
  const { book } = useBook();
  const find = useFinder();
  const [location] = useLocation();
  const recent = useRead('journal.recent', { limit: 1 }, { enabled: book !== undefined, now: true });
  const last = recent.data?.gestures[0];
  return (
    <header className="rail">
      <div className="rail-book">
        <p className="rail-name">{book?.name ?? words.product}</p>
        {book ? (
          <p className="rail-size">
            {counted(book.living, 'colony', 'colonies')}, {counted(book.yards.length, 'yard', 'yards')}
          </p>
        ) : null}
        {book?.demo ? <p className="rail-size">{words.demo}</p> : null}
      </div>
      <button type="button" className="rail-find" aria-haspopup="dialog" onClick={find}>
        {findCommand.name}
        <kbd aria-hidden="true">{hint(findCommand)}</kbd>
      </button>
      <nav aria-label={words.screens}>
        <ul>
          {screenCommands.map(({ at, screen, command }) => {
            const here = location === at || location.startsWith(`${at}/`) || (at === '/stock' && location === '/orders');
            return (
              <li key={at}>
                <Link href={at} aria-current={here ? 'page' : undefined} title={hint(command)}>
                  {screen}
                  {at === '/needs' ? <NeedsCount /> : null}
                </Link>
              </li>
            );
          })}
        </ul>
      </nav>
      <div className="rail-foot">
        {book ? <p>{last ? words.saved(dayTight(dayFromIso(last.at.slice(0, 10))), last.at.slice(11, 16)) : words.nothingSaved}</p> : null}
        <p>
          <Link href="/help" title={hint(helpCommand)}>
            {words.help}
          </Link>
        </p>
        <ThemeSwitch />
      </div>
    </header>
  );
}

/** How many things are to be done now; nothing while that is not known, or where it is none. */
function NeedsCount() {
  const due = useQuietRead('needs.count', {})?.due ?? 0;
  if (due === 0) return null;
  return (
    <>
      <span className="rail-count" aria-hidden="true">
        {due}
      </span>
      <span className="visually-hidden">{words.toDo(due)}</span>
    </>
  );
}
