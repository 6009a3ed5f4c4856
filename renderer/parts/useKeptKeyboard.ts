import { useEffect, type RefObject } from 'react';

/** A part of the page that has other plans for the keyboard has carried them out by then (ms). */
const rest = 100;

/** When what held the keyboard goes from the window and nothing else takes it over, it is at the head of the page. */
export function useKeptKeyboard(head: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    let held: Element | null = null;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const lost = () => held?.isConnected === false && document.activeElement === document.body;
    const hold = ({ target }: FocusEvent) => (held = target instanceof Element ? target : null);
    const watch = new MutationObserver(() => {
      if (!lost()) return;
      clearTimeout(timer);
      timer = setTimeout(() => {
        if (lost()) head.current?.focus({ preventScroll: true });
      }, rest);
    });
    document.addEventListener('focusin', hold);
    watch.observe(document.body, { childList: true, subtree: true });
    return () => {
      clearTimeout(timer);
      document.removeEventListener('focusin', hold);
      watch.disconnect();
    };
  }, [head]);
}
