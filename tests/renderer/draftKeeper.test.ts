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
  const turn = (act: () => Answer<{ stamp: string }>) => new Promise<Answer<{ stamp: string }>>((resolve) => waiting.push(() => resolve(act())));
  const stampOf = (key: string) => (kept.has(key) ? `stamp of ${kept.get(key)}` : null);
  const moved = (key: string, over: string | null | undefined) => over !== undefined && over !== stampOf(key);
  let deaf = false;
  return {
    kept,
    log,
    fill: (value: boolean) => {
      full = value;
    },
    /** Keeps what it is sent, but the answer is lost. */
    deafen: (value: boolean) => {
      deaf = value;
    },
    asked: () => vi.waitFor(() => expect(waiting.length).toBeGreaterThan(0)),
    answerNext: async () => {
      await vi.waitFor(() => expect(waiting.length).toBeGreaterThan(0));
      waiting.shift()?.();
    },
    desk: {
      keep: (key: string, body: string, over?: string | null) =>
        turn(() => {
          log.push(`keep ${body}`);
          if (full) return refuse('disk-full', 'The disk is full.');
          if (moved(key, over)) return refuse('moved-on', 'Another window.');
          kept.set(key, body);
          return deaf ? refuse('defect', 'No answer.') : { ok: true, value: { stamp: `stamp of ${body}` } };
        }),
      drop: (key: string, over?: string | null) =>
        turn(() => {
          log.push('drop');
          if (moved(key, over)) return refuse('moved-on', 'Another window.');
          kept.delete(key);
          return { ok: true, value: { stamp: '' } };
        }),
      fetch: async (key: string) => ({ ok: true as const, value: { body: kept.get(key) ?? null, stamp: stampOf(key) } }),
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
    expect(await fetched).toEqual({ ok: true, value: { body: 'two', stamp: 'stamp of two' } });
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

describe('two windows on one sheet', () => {
  /** A keeper that has read the key, and a send of it that the desk answers. */
  async function openedOn(kept: string | null) {
    const slow = slowDesk();
    if (kept !== null) slow.kept.set('k', kept);
    const keeper = new DraftKeeper(slow.desk, 10_000);
    await keeper.fetch('k');
    const send = async (body: string | null) => {
      keeper.change('k', body);
      const sent = keeper.flush();
      await slow.answerNext();
      await sent;
    };
    return { ...slow, keeper, send };
  }

  test('what another window kept is never written over; the person is told and chooses', async () => {
    const { kept, keeper, send, answerNext } = await openedOn('before');
    await send('mine');
    expect(kept.get('k')).toBe('mine');
    kept.set('k', 'theirs');
    await send('mine, and more');
    expect(kept.get('k')).toBe('theirs');
    expect([...keeper.apart()]).toEqual(['k']);
    // Nothing more is sent while the two are apart.
    keeper.change('k', 'mine, and still more');
    await keeper.flush();
    expect(kept.get('k')).toBe('theirs');
    expect(await keeper.agrees('k')).toBe(false);

    const over = keeper.keepMine('k', 'mine, and still more');
    await answerNext();
    await over;
    expect(kept.get('k')).toBe('mine, and still more');
    expect(keeper.apart().size).toBe(0);
    expect(await keeper.agrees('k')).toBe(true);
  });

  test('their typing can be taken, and typing goes on from it', async () => {
    const { kept, keeper, send } = await openedOn(null);
    kept.set('k', 'theirs');
    await send('mine');
    expect(await keeper.takeTheirs('k')).toMatchObject({ ok: true, value: { body: 'theirs' } });
    await send('theirs and mine');
    expect(kept.get('k')).toBe('theirs and mine');
  });

  test('a sheet entered or emptied elsewhere is noticed before it is entered here', async () => {
    const { kept, keeper, send } = await openedOn('typed');
    expect(await keeper.agrees('k')).toBe(true);
    kept.delete('k');
    expect(await keeper.agrees('k')).toBe(false);
    expect(keeper.apart().has('k')).toBe(true);
    await keeper.takeTheirs('k');
    await send('anew');
    expect(kept.get('k')).toBe('anew');
  });

  test('a window that typed nothing shows what is newer, one that did does not', async () => {
    const { kept, keeper } = await openedOn('old');
    expect(await keeper.newer('k')).toBeNull();
    kept.set('k', 'new');
    expect(await keeper.newer('k')).toEqual({ body: 'new', stamp: 'stamp of new' });
    expect(await keeper.newer('k')).toBeNull();
  });

  test('an answer lost on the way does not make the window a stranger to its own text', async () => {
    const { kept, keeper, deafen, send, answerNext } = await openedOn(null);
    deafen(true);
    await send('one');
    expect(kept.get('k')).toBe('one');
    deafen(false);
    keeper.change('k', 'two');
    const sent = keeper.flush();
    await answerNext();
    await answerNext();
    await sent;
    expect(kept.get('k')).toBe('two');
    expect(keeper.apart().size).toBe(0);
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
