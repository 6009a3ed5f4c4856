import { useEffect, useRef, type ReactNode } from 'react';
import type { Day } from '#shared/days.ts';
import { anotherDay } from '../commands/commands.ts';
import { shortcutText } from '../commands/shortcut.ts';
import { asOfDay } from '../desk/asOfDay.ts';
import { useBook } from '../desk/useBook.ts';
import { dayText } from './format.ts';
import { useKeptKeyboard } from './useKeptKeyboard.ts';
import { words } from './words.ts';

export interface PageProps {
  readonly title: string;
  /** One line that says what this page answers. */
  readonly line: ReactNode;
  /** At most one main button. */
  readonly action?: ReactNode;
  /** The day the page's answer is of, where it names one itself. */
  readonly asOf?: Day | undefined;
  /** The page fills the window's height and its table scrolls inside. */
  readonly fill?: boolean;
  readonly children?: ReactNode;
}

const hint = anotherDay.shortcut ? `${anotherDay.name} (${shortcutText(anotherDay.shortcut)})` : anotherDay.name;

/** Head and body of a screen. */
export function Page({ title, line, action, asOf, fill = false, children }: PageProps) {
  const head = useRef<HTMLHeadingElement>(null);
  const { book, today } = useBook();
  const day = asOf ?? (book === undefined ? undefined : today);

  useEffect(() => {
    document.title = `${title} · ${words.product}`;
  }, [title]);

  // A new page takes the keyboard to its head, unless the page itself has put it somewhere already.
  useEffect(() => {
    const main = head.current?.closest('main');
    if (main && !main.contains(document.activeElement)) head.current?.focus({ preventScroll: true });
  }, []);
  useKeptKeyboard(head);

  return (
    <div className={fill ? 'page page-fill' : 'page'}>
      <header className="page-head">
        <div className="page-title">
          <h1 ref={head} tabIndex={-1}>
            {title}
          </h1>
          <p className="page-line">{line}</p>
        </div>
        <div className="page-side">
          {day ? (
            <p className="page-as-of">
              <button type="button" className="link" title={hint} onClick={asOfDay.choose}>
                {words.asOf(dayText(day))}
              </button>
            </p>
          ) : null}
          {action ? <div className="page-action">{action}</div> : null}
        </div>
      </header>
      {children}
    </div>
  );
}
