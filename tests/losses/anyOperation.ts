import fc from 'fast-check';
import { addDays, day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { hived, yards } from './recorded.ts';

/** Rows of a random operation, made from a plain list of what lives where. */
export const operation = fc.array(fc.tuple(fc.nat(35), fc.nat(11), fc.nat(), fc.nat()), { maxLength: 60 }).map((steps) => {
  let today = day('2021-02-01');
  const living: string[] = [];
  let made = 0;
  const rows: Cells[] = [];
  for (const [gap, what, one, two] of steps) {
    today = addDays(today, gap);
    const yard = yards[two % 3]?.code ?? '';
    const at = one % Math.max(1, living.length);
    const colony = living[at];
    if (colony === undefined || what < 4) {
      made += 1;
      living.push(`C${made}`);
      rows.push(hived(today, `C${made}`, yard, { origin: ['package', 'nuc', 'swarm', 'bought colony', 'opening'][one % 5] ?? '' }));
      continue;
    }
    const into = living[(at + 1) % living.length];
    if (what === 4) {
      made += 1;
      living.push(`C${made}`);
      rows.push({ date: today, entry: 'split', colony, new_colony: `C${made}`, to_yard: yard, queen: 'stays' });
    } else if (what < 7) rows.push({ date: today, entry: 'move', colony, to_yard: yard });
    else {
      const kind = ['loss', 'sale', 'gift', 'absconded', 'combine'][what - 7] ?? '';
      if (kind === 'combine' && into === colony) continue;
      rows.push({ date: today, entry: kind, colony, ...(kind === 'combine' && into !== undefined ? { into } : {}) });
      living.splice(at, 1);
    }
  }
  return rows;
});
