import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Turns, type Haste } from '#core/desk/turns.ts';

/** Takes the turns all at once; answers in which order they were carried out. */
async function orderOf(hastes: readonly Haste[]): Promise<number[]> {
  const turns = new Turns();
  const order: number[] = [];
  let running = 0;
  await Promise.all(hastes.map((haste, at) => turns.take(haste, async () => {
    running += 1;
    expect(running, 'two at a time').toBe(1);
    order.push(at);
    await new Promise(setImmediate);
    running -= 1;
  })));
  return order;
}

test('a quick read steps past long ones that have not begun, and past no write', async () => {
  expect(await orderOf(['patient', 'patient', 'patient', 'read', 'read'])).toEqual([0, 3, 4, 1, 2]);
  expect(await orderOf(['patient', 'patient', 'write', 'read'])).toEqual([0, 1, 2, 3]);
  expect(await orderOf(['read', 'patient', 'read', 'write', 'patient', 'read'])).toEqual([0, 2, 1, 3, 5, 4]);
});

test('for any calls: each has its turn once, one at a time; no write moves, and nothing moves past one', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.constantFrom<Haste>('write', 'read', 'patient'), { maxLength: 20 }), async (hastes) => {
      const order = await orderOf(hastes);
      expect(order.toSorted((a, b) => a - b)).toEqual(hastes.map((_, at) => at));
      for (const [at, haste] of hastes.entries()) if (haste === 'write') expect(order.indexOf(at)).toBe(at);
      for (const same of ['read', 'patient'] as const) expect(order.filter((at) => hastes[at] === same)).toEqual(hastes.flatMap((haste, at) => (haste === same ? [at] : [])));
    }),
  );
});

test('one that fails is told to whoever asked, and the next has its turn', async () => {
  const turns = new Turns();
  const failed = turns.take('write', () => Promise.reject(new Error('no')));
  const next = turns.take('read', () => Promise.resolve('yes'));
  await expect(failed).rejects.toThrow('no');
  expect(await next).toBe('yes');
});
