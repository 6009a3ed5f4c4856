import { createContext, useContext, useLayoutEffect, useMemo, useState, useSyncExternalStore, type FocusEvent, type MouseEvent, type ReactNode } from 'react';
import { createPortal } from 'react-dom';
import { MarginStore, type MarginNote } from './marginStore.ts';
import { fromStore, toStore } from './theme.ts';
import { words } from './words.ts';

/*
 * The margin explains whatever is focused or hovered. Notes go through a small store of their own, so that moving over
 * ten thousand rows redraws the margin and nothing else. What a page says by default is drawn by the page itself,
 * through a portal, so it is always as fresh as the page.
 */
interface MarginPlace {
  readonly store: MarginStore;
  readonly slot: HTMLElement | null;
  readonly setSlot: (slot: HTMLElement | null) => void;
}

const Place = createContext<MarginPlace | null>(null);

export function MarginProvider({ children }: { readonly children: ReactNode }) {
  const [store] = useState(() => new MarginStore());
  const [slot, setSlot] = useState<HTMLElement | null>(null);
  const place = useMemo(() => ({ store, slot, setSlot }), [store, slot]);
  return <Place value={place}>{children}</Place>;
}

function usePlace(): MarginPlace {
  const place = useContext(Place);
  if (place === null) throw new Error('the margin is used outside its provider');
  return place;
}

/** Empties the margin of notes when the address changes; what they explained is gone. */
export function useFreshMargin(address: string): void {
  const { store } = usePlace();
  // In the clean-up, so that a page that takes the keyboard as it appears keeps its note.
  useLayoutEffect(() => () => store.clear(), [store, address]);
}

/** What the margin says while nothing is focused or hovered. Several stand below each other. */
export function MarginContent({ heading, children }: { readonly heading: string; readonly children: ReactNode }) {
  const { slot } = usePlace();
  if (slot === null) return null;
  return createPortal(
    <section className="margin-part">
      <h2>{heading}</h2>
      {children}
    </section>,
    slot,
  );
}

/** One headed piece inside a note. */
export function MarginPart({ heading, children }: { readonly heading: string; readonly children: ReactNode }) {
  return (
    <section className="margin-part">
      <h2>{heading}</h2>
      {children}
    </section>
  );
}

export interface MarginProps {
  onFocus(event: FocusEvent): void;
  onBlur(event: FocusEvent): void;
  onMouseEnter(event: MouseEvent): void;
  onMouseLeave(event: MouseEvent): void;
}

/** Gives the props that make a thing explain itself: `<tr {...marginProps(() => <Why row={row} />)}>`. */
export function useMarginNote(): (note: MarginNote) => MarginProps {
  const { store } = usePlace();
  return useMemo(
    () => (note: MarginNote) => ({
      onFocus: () => store.focus(note),
      onBlur: (event: FocusEvent) => {
        if (!(event.relatedTarget instanceof Element && event.relatedTarget.closest('.margin'))) store.blur();
      },
      onMouseEnter: () => store.enter(note),
      onMouseLeave: () => store.leave(),
    }),
    [store],
  );
}

const foldKey = 'outyard.margin';
export type Fold = 'auto' | 'open' | 'folded';

/** On narrow windows the margin folds by itself (`auto`) until the person says otherwise. */
export function useFold(): [Fold, (fold: Fold) => void] {
  const [fold, setFold] = useState<Fold>(() => {
    const kept = fromStore(foldKey);
    return kept === 'open' || kept === 'folded' ? kept : 'auto';
  });
  return [
    fold,
    (next) => {
      toStore(foldKey, next);
      setFold(next);
    },
  ];
}

export function Margin({ onFold }: { readonly onFold: (fold: Fold) => void }) {
  const { store, setSlot } = usePlace();
  const note = useSyncExternalStore(store.subscribe, store.current);
  return (
    <aside className="margin" aria-label={words.margin} onMouseEnter={() => store.hold()} onMouseLeave={() => store.release()}>
      <button type="button" className="quiet margin-fold" aria-label={words.foldMargin} title={words.foldMargin} onClick={() => onFold('folded')}>
        ›
      </button>
      <div className="margin-note" aria-live="polite">
        {note === null ? null : typeof note === 'function' ? note() : note}
      </div>
      <div className="margin-default" ref={setSlot} hidden={note !== null} />
    </aside>
  );
}

/** Shown in the margin's stead while it is folded. */
export function OpenMargin({ onFold }: { readonly onFold: (fold: Fold) => void }) {
  return (
    <button type="button" className="quiet margin-open" onClick={() => onFold('open')}>
      {words.openMargin}
    </button>
  );
}
