import type { Page } from 'playwright-core';

/** What the page's main thread did since it was read last; milliseconds. */
export interface Watched {
  /** Tasks of 50 ms and more, as the browser itself reports them (Long Tasks API). */
  readonly tasks: readonly number[];
  /** The longest time between two ticks of a 10 ms timer, less those 10 ms. */
  readonly gap: number;
  /** When each section of the review had its content, by the page's own clock. */
  readonly sections: Readonly<Record<string, number>>;
}

declare global {
  interface Window {
    outyardWatch?: { tasks: number[]; gap: number; sections: Record<string, number>; observer: PerformanceObserver };
  }
}

/** Watches the page from its first moment on; call before it is opened. */
export async function startWatch(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const note = (entries: PerformanceEntryList) => {
      for (const { duration } of entries) watch.tasks.push(duration);
    };
    const observer = new PerformanceObserver((list) => note(list.getEntries()));
    const watch = { tasks: [] as number[], gap: 0, sections: {} as Record<string, number>, observer };
    window.outyardWatch = watch;
    observer.observe({ type: 'longtask', buffered: true });
    let last = performance.now();
    setInterval(() => {
      const now = performance.now();
      watch.gap = Math.max(watch.gap, now - last - 10);
      last = now;
    }, 10);
    setInterval(() => {
      for (const section of document.querySelectorAll('.review-section')) {
        const name = section.getAttribute('aria-label') ?? '';
        if (watch.sections[name] === undefined && section.childElementCount > 1 && section.querySelector('.review-waiting') === null) watch.sections[name] = performance.now();
      }
    }, 25);
  });
}

/** What was seen since the last call; the sections stay. */
export async function readWatch(page: Page): Promise<Watched> {
  return page.evaluate(() => {
    const watch = window.outyardWatch;
    if (watch === undefined) return { tasks: [], gap: 0, sections: {} };
    for (const { duration } of watch.observer.takeRecords()) watch.tasks.push(duration);
    const seen = { tasks: watch.tasks, gap: watch.gap, sections: { ...watch.sections } };
    watch.tasks = [];
    watch.gap = 0;
    return seen;
  });
}
