import type { WorkSlot } from '#shared/contract/work.ts';
import { slotText } from './hoursForm.ts';
import { words } from './words.ts';

/** A weekly pattern in a few words, `Mon to Fri 18-20, Sat 8-16`; days without hours are left out. */
export function patternText(week: readonly (WorkSlot | null)[]): string {
  const runs: { first: number; last: number; slot: string }[] = [];
  week.forEach((own, at) => {
    const slot = slotText(own);
    const before = runs.at(-1);
    if (before?.slot === slot) before.last = at;
    else runs.push({ first: at, last: at, slot });
  });
  const name = (at: number) => words.weekday[at] ?? '';
  return runs.filter(({ slot }) => slot !== '').map(({ first, last, slot }) => `${name(first)}${last > first ? ` to ${name(last)}` : ''} ${slot}`).join(', ');
}
