import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keptFor } from '#core/desk/keptFor.ts';
import { breathe, SetAside, Turns, type Haste } from '#core/desk/turns.ts';

/** Takes the turns all at once; answers in which order they were carried out. */
async function orderOf(hastes: readonly Haste[]): Promise<number[]> {
  const turns = new Turns();
  const order: number[] = [];
  await Promise.all(hastes.map((haste, at) => turns.take(haste, async () => {
    order.push(at);
    await Promise.resolve();
  })));
  return order;
}

/** A book of one number, in which a write has a half. */
class Numbered {
  value = 0;
  half = false;
}

/** Works on until the slice is over and it has rested once, if it may. */
async function rest(): Promise<void> {
  const since = performance.now();
  while (performance.now() - since < 15);
  await breathe();
}

test('a quick read steps past long ones, and so does a write; no quick read or draft steps past a write', async () => {
  expect(await orderOf(['patient', 'patient', 'patient', 'read', 'read'])).toEqual([3, 4, 0, 1, 2]);
  expect(await orderOf(['patient', 'patient', 'write', 'read'])).toEqual([2, 3, 0, 1]);
  expect(await orderOf(['read', 'patient', 'draft', 'write', 'patient', 'read', 'idle', 'draft'])).toEqual([0, 2, 3, 5, 7, 1, 4, 6]);
});

test('for any calls: each has its turn once; writes, drafts and quick reads keep their order, and so do the long ones', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.constantFrom<Haste>('write', 'draft', 'read', 'firm', 'patient', 'idle'), { maxLength: 20 }), async (hastes) => {
      const order = await orderOf(hastes);
      expect(order.toSorted((a, b) => a - b)).toEqual(hastes.map((_, at) => at));
      for (const same of [['write', 'draft', 'read', 'firm'], ['patient'], ['idle']] as const) {
        const own = (at: number) => same.some((haste) => haste === hastes[at]);
        expect(order.filter(own)).toEqual(hastes.flatMap((_, at) => (own(at) ? [at] : [])));
      }
    }),
  );
});

test('a long read that breathes lets a quick read and a draft have their turn before it ends', async () => {
  const turns = new Turns();
  const seen: string[] = [];
  const long = turns.take('read', async () => {
    seen.push('long begins');
    void turns.take('read', () => Promise.resolve(seen.push('quick')));
    void turns.take('draft', () => Promise.resolve(seen.push('draft')));
    await rest();
    seen.push('long ends');
  });
  await long;
  expect(seen).toEqual(['long begins', 'quick', 'draft', 'long ends']);
});

test('a long read is set aside for a write and answers with what is so after it', async () => {
  const turns = new Turns();
  let [value, begun] = [1, 0];
  const long = turns.take('patient', async () => {
    begun += 1;
    const before = value;
    if (begun === 1) void turns.take('write', () => Promise.resolve((value = 2)));
    await rest();
    return [before, value];
  });
  expect(await long).toEqual([2, 2]);
  expect(begun).toBe(2);
});

test('a long read that writes come between again and again is carried to its end before the next', async () => {
  const turns = new Turns();
  let [writes, begun] = [0, 0];
  const seen = await turns.take('read', async () => {
    begun += 1;
    void turns.take('write', () => Promise.resolve((writes += 1)));
    const before = writes;
    await rest();
    await rest();
    return { before, after: writes };
  });
  expect(begun).toBe(4);
  expect(seen).toEqual({ before: 2, after: 2 });
});

test('what is done when nobody asks gives way to everything, however often', async () => {
  const turns = new Turns();
  let begun = 0;
  const order: string[] = [];
  await turns.take('idle', async () => {
    begun += 1;
    if (begun < 8) void turns.take('write', () => Promise.resolve(order.push('write')));
    await rest();
    order.push('idle');
  });
  expect(begun).toBe(8);
  expect(order).toEqual([...Array.from({ length: 7 }, () => 'write'), 'idle']);
});

test('two that wait for the same thing both get it, and it is made anew once when it is set aside', async () => {
  const turns = new Turns();
  const picture = {};
  let [made, value] = [0, 1];
  const common = () => keptFor(picture, 'the same', async () => {
    made += 1;
    const before = value;
    if (made === 1) void turns.take('write', () => Promise.resolve((value = 2)));
    await rest();
    return [before, value];
  });
  expect(await Promise.all([turns.take('read', common), turns.take('read', common)])).toEqual([[2, 2], [2, 2]]);
  expect(made).toBe(2);
});

test('for any mixture of long reads and writes no read sees half a write or joins what was before it to what was after', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.record({ haste: fc.constantFrom<Haste>('write', 'draft', 'read', 'firm', 'patient', 'idle'), rests: fc.integer({ min: 0, max: 3 }), later: fc.boolean() }), { maxLength: 12 }), async (calls) => {
      const turns = new Turns();
      const book = new Numbered();
      let writes = 0;
      const act = (haste: Haste, rests: number) => async () => {
        expect(book.half).toBe(false);
        if (haste === 'write') {
          book.half = true;
          for (let at = 0; at < rests; at += 1) await new Promise(setImmediate);
          await breathe();
          [book.half, book.value] = [false, book.value + 1];
          return;
        }
        const before = book.value;
        for (let at = 0; at < rests; at += 1) {
          await rest();
          expect([book.half, book.value]).toEqual([false, before]);
        }
      };
      const asked: Promise<void>[] = [];
      for (const { haste, rests, later } of calls) {
        if (later) await new Promise(setImmediate);
        if (haste === 'write') writes += 1;
        asked.push(turns.take(haste, act(haste, rests)));
      }
      await Promise.all(asked);
      expect(book.value).toBe(writes);
    }),
    { numRuns: 25 },
  );
});

test('what a failed read leaves resting is not waited for for ever by another that wants the same', async () => {
  const turns = new Turns();
  const picture = {};
  let made = 0;
  const common = () => keptFor(picture, 'the same', async () => {
    made += 1;
    await rest();
    return 'there';
  });
  const failed = turns.take('read', () => Promise.all([common(), Promise.reject(new Error('no'))]));
  const other = turns.take('read', common);
  await expect(failed).rejects.toThrow('no');
  expect(await other).toBe('there');
  expect(made).toBe(2);
});

test('a part of a read that is set aside and goes on by itself reads nothing after the write', async () => {
  const turns = new Turns();
  let [value, begun] = [1, 0];
  const parts: Promise<number[]>[] = [];
  const long = turns.take('patient', async () => {
    begun += 1;
    if (begun === 1) void turns.take('write', () => Promise.resolve((value = 2)));
    const elsewhere = new Promise<void>((done) => {
      // Something that is not the desk's, and takes a few rounds.
      let rounds = 0;
      const round = () => void (++rounds < 6 ? setImmediate(round) : done());
      round();
    });
    const part = async () => {
      const before = value;
      await elsewhere;
      await breathe();
      return [before, value];
    };
    parts.push(part());
    const [own] = await Promise.all([parts.at(-1), rest()]);
    return own;
  });
  expect(await long).toEqual([2, 2]);
  expect(begun).toBe(2);
  await expect(parts[0]).rejects.toThrow(SetAside);
});

test('one that fails is told to whoever asked, and the next has its turn', async () => {
  const turns = new Turns();
  const failed = turns.take('write', () => Promise.reject(new Error('no')));
  const next = turns.take('read', () => Promise.resolve('yes'));
  await expect(failed).rejects.toThrow('no');
  expect(await next).toBe('yes');
});
