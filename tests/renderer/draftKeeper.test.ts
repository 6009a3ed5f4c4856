import { describe, expect, test, vi } from 'vitest';
import { day } from '#shared/days.ts';
import { refuse, type Answer } from '#shared/faults.ts';
import { DraftKeeper } from '../../renderer/screens/tonight/draftKeeper.ts';
import { noRounds, noteRound, readIndex, writeIndex } from '../../renderer/screens/tonight/roundIndex.ts';

/** A desk that answers when told to and remembers like the real one. */
function slowDesk() {
  const kept = new Map<string, string>();
  const log: string[] = [];
  const waiting: (() => void)[] = [];
  let full = false;
  const turn = (act: () => Answer<unknown>) => new Promise<Answer<unknown>>((resolve) => waiting.push(() => resolve(act())));
  return {
    kept,
    log,
    fill: (value: boolean) => {
      full = value;
    },
    asked: () => vi.waitFor(() => expect(waiting.length).toBeGreaterThan(0)),
    answerNext: async () => {
      await vi.waitFor(() => expect(waiting.length).toBeGreaterThan(0));
      waiting.shift()?.();
    },
    desk: {
      keep: (key: string, body: string) =>
        turn(() => {
          log.push(`keep ${body}`);
          if (full) return refuse('disk-full', 'The disk is full.');
          kept.set(key, body);
          return { ok: true, value: {} };
        }),
      drop: (key: string) =>
        turn(() => {
          log.push('drop');
          kept.delete(key);
          return { ok: true, value: {} };
        }),
      fetch: async (key: string) => ({ ok: true as const, value: { body: kept.get(key) ?? null } }),
    },
  };
}

describe('keeping drafts', () => {
  test('a burst of typing is one send with the newest text', async () => {
    const { desk, kept, log, answerNext } = slowDesk();
    const keeper = new DraftKeeper(desk, 5);
    for (const text of ['a', 'ab', 'abc']) keeper.change('k', text);
    expect(keeper.state().is).toBe('waiting');
    await answerNext();
    await vi.waitFor(() => expect(keeper.state().is).toBe('kept'));
    expect(log).toEqual(['keep abc']);
    expect(kept.get('k')).toBe('abc');
  });

  test('sends never overtake each other and a fetch sees the newest', async () => {
    const { desk, log, asked, answerNext } = slowDesk();
    const keeper = new DraftKeeper(desk, 10_000);
    keeper.change('k', 'one');
    void keeper.flush();
    await asked();
    keeper.change('k', 'two');
    const fetched = keeper.fetch('k');
    await answerNext();
    await answerNext();
    expect(await fetched).toEqual({ ok: true, value: { body: 'two' } });
    expect(log).toEqual(['keep one', 'keep two']);
  });

  test('what could not be kept is said and sent again with the next change', async () => {
    const { desk, kept, fill, answerNext } = slowDesk();
    const keeper = new DraftKeeper(desk, 10_000);
    fill(true);
    keeper.change('a', 'typed');
    const first = keeper.flush();
    await answerNext();
    await first;
    expect(keeper.state()).toMatchObject({ is: 'failed', fault: { sentence: 'The disk is full.' } });
    fill(false);
    keeper.change('b', 'more');
    const second = keeper.flush();
    await answerNext();
    await answerNext();
    await second;
    expect([...kept]).toEqual([['a', 'typed'], ['b', 'more']]);
    expect(keeper.state().is).toBe('kept');
  });

  test('an emptied sheet drops its draft', async () => {
    const { desk, kept, answerNext } = slowDesk();
    kept.set('k', 'old');
    const keeper = new DraftKeeper(desk, 10_000);
    keeper.change('k', null);
    const sent = keeper.flush();
    await answerNext();
    await sent;
    expect(kept.size).toBe(0);
    expect(keeper.state().is).toBe('still');
  });
});

describe('the list of sheets not entered', () => {
  test('notes, counts and forgets sheets, newest day first', () => {
    let index = noteRound(noRounds, 2, day('2026-05-18'), 3);
    index = noteRound(index, 1, day('2026-05-20'), 1);
    index = noteRound(index, 2, day('2026-05-18'), 4);
    expect(index).toEqual({ last: { yard: 2, day: '2026-05-18' }, open: [{ yard: 1, day: '2026-05-20', filled: 1 }, { yard: 2, day: '2026-05-18', filled: 4 }] });
    expect(readIndex(writeIndex(index))).toEqual(index);
    expect(noteRound(index, 1, day('2026-05-20'), 0).open).toHaveLength(1);
  });

  test('a text that is none of ours is no list', () => {
    for (const text of ['', '{', 'null', '[]', '5']) expect(readIndex(text)).toEqual(noRounds);
    expect(readIndex('{"last":{"yard":1,"day":"2026-02-30"},"open":[{"yard":"1"},5]}')).toEqual(noRounds);
  });
});
