import { createContext, useCallback, useContext, useEffect, useLayoutEffect, useMemo, useRef, useState, useSyncExternalStore, type ReactNode } from 'react';
import { useLocation } from 'wouter';
import type { Answer } from '#shared/faults.ts';
import { asOfDay, useAsOf } from '../desk/asOfDay.ts';
import { useBook } from '../desk/useBook.ts';
import { useWrite } from '../desk/useDesk.ts';
import { useNotice } from '../parts/Notice.tsx';
import { chooseTheme } from '../parts/theme.ts';
import type { Command, CommandHands, CommandSetting } from './command.ts';
import { commands } from './commands.ts';
import { FindBox } from './FindBox.tsx';
import { offers } from './offers.ts';
import { isPressed } from './shortcut.ts';

const Finder = createContext<(() => void) | null>(null);

/** Opens the Find box. */
export function useFinder(): () => void {
  const open = useContext(Finder);
  if (open === null) throw new Error('the Find box is opened outside its provider');
  return open;
}

/** Holds the Find box and the one listener for shortcuts; knows what commands may look at and do. */
export function CommandsProvider({ children }: { readonly children: ReactNode }) {
  const [open, setOpen] = useState(false);
  const setting = useSetting();
  const hands = useHands(() => setOpen(true));
  const finder = useCallback(() => setOpen(true), []);

  const now = useRef({ setting, hands, open });
  // With the box itself, not a moment later: a key pressed as soon as it has gone is for what is there then.
  useLayoutEffect(() => {
    now.current = { setting, hands, open };
  });
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const command = commands.find(({ shortcut }) => shortcut && isPressed(shortcut, event));
      if (command === undefined) return;
      // With the box open, what is behind it gets no commands; nor does the browser get ours.
      const here = now.current;
      if (event.isComposing || (!here.open && !command.enabled(here.setting))) return;
      event.preventDefault();
      if (!event.repeat && !here.open) command.run(here.hands);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);

  const run = useCallback((command: Command) => command.run(now.current.hands), []);
  return (
    <Finder value={finder}>
      {children}
      {open ? <FindBox setting={setting} onRun={run} onGo={hands.go} onClose={() => setOpen(false)} /> : null}
    </Finder>
  );
}

function useSetting(): CommandSetting {
  const { book } = useBook();
  const offered = useSyncExternalStore(offers.subscribe, offers.names);
  const asOf = useAsOf();
  return useMemo(() => ({ book: book ?? null, offered, asOf }), [book, offered, asOf]);
}

function useHands(find: () => void): CommandHands {
  const [location, go] = useLocation();
  const { say } = useNotice();
  const undo = useWrite('journal.undo');
  const redo = useWrite('journal.redo');
  const close = useWrite('book.close');
  const demo = useWrite('book.demo');
  useLayoutEffect(() => offers.arrived(location), [location]);

  const told = (answer: Answer<unknown>) => {
    if (!answer.ok) say([answer.sentence, answer.mend].filter(Boolean).join(' '));
  };
  return {
    go: (address) => go(address),
    onScreen: (offer, address) => {
      if (address !== undefined && address !== location) go(address);
      offers.ask(offer, address ?? location);
    },
    chooseDay: asOfDay.choose,
    backToToday: asOfDay.backToToday,
    undo: () =>
      void undo.send({}).then((answer) => {
        if (answer.ok) say(answer.value.sentence);
        else told(answer);
      }),
    redo: () =>
      void redo.send({}).then((answer) => {
        if (answer.ok) say(answer.value.sentence, { undoGesture: answer.value.gesture });
        else told(answer);
      }),
    closeBook: () => void close.send({}).then(told),
    openDemo: (which) => void demo.send({ which }).then(told),
    paper: chooseTheme,
    find,
  };
}
