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
            return <li key={at}>{at === '/needs' ? <NeedsLink here={here} title={hint(command)} /> : <PlaceLink at={at} here={here} title={hint(command)}>{screen}</PlaceLink>}</li>;
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

interface PlaceProps {
  readonly here: boolean;
  readonly title: string | undefined;
}

function PlaceLink({ at, here, title, children, count = 0 }: PlaceProps & { readonly at: string; readonly children: string; readonly count?: number }) {
  return (
    // The figure is drawn by the style sheet, so that the name stays words: "Needs, 12 to do".
    <Link href={at} aria-current={here ? 'page' : undefined} title={title} {...(count === 0 ? {} : { 'aria-label': words.toDo(children, count), 'data-count': count })}>
      {children}
    </Link>
  );
}

/** With how many things are to be done now; without while that is not known, or where it is none. */
function NeedsLink(place: PlaceProps) {
  const due = useQuietRead('needs.count', {})?.due ?? 0;
  return (
    <PlaceLink at="/needs" count={due} {...place}>
      {words.rail.needs}
    </PlaceLink>
  );
}
