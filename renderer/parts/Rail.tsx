import { Link, useLocation } from 'wouter';
import { dayFromIso } from '#shared/days.ts';
import { useBook } from '../desk/useBook.ts';
import { useRead } from '../desk/useDesk.ts';
import { counted, dayTight } from './format.ts';
import { ThemeSwitch } from './ThemeSwitch.tsx';
import { words } from './words.ts';

const screens = [
  { at: '/tonight', name: words.rail.tonight },
  { at: '/yards', name: words.rail.yards },
  { at: '/colonies', name: words.rail.colonies },
  { at: '/lines', name: words.rail.lines },
  { at: '/losses', name: words.rail.losses },
  { at: '/stock', name: words.rail.stock },
  { at: '/book', name: words.rail.book },
] as const;

export function Rail() {
  const { book } = useBook();
  const [location] = useLocation();
  const recent = useRead('journal.recent', { limit: 1 }, { enabled: book !== undefined });
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
      <nav aria-label={words.screens}>
        <ul>
          {screens.map(({ at, name }) => {
            const here = location === at || location.startsWith(`${at}/`);
            return (
              <li key={at}>
                <Link href={at} aria-current={here ? 'page' : undefined}>
                  {name}
                </Link>
              </li>
            );
          })}
        </ul>
      </nav>
      <div className="rail-foot">
        {book ? <p>{last ? words.saved(dayTight(dayFromIso(last.at.slice(0, 10))), last.at.slice(11, 16)) : words.nothingSaved}</p> : null}
        <ThemeSwitch />
      </div>
    </header>
  );
}
