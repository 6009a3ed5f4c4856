import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SeededRandom } from '#core/demo/seededRandom.ts';
import { demoBook, openDemo } from '#core/desk/buildDemo.ts';
import { lossAnswersIn } from '#core/desk/lossAnswersOf.ts';
import { seasonsFrom } from '#core/desk/lossFactorHandlers.ts';
import { chosenRows, factorsFor, type FactorFacts } from '#core/losses/lossFactors.ts';
import { riskTable } from '#core/losses/riskTable.ts';
import type { Fate, WinterRow } from '#core/losses/winterRows.ts';
import { day } from '#shared/days.ts';

export interface DemoRows {
  readonly facts: FactorFacts;
  readonly rows: readonly WinterRow[];
}

/** The Ossar Valley demo as a book, and its colonies in all winters that are over. */
export async function ossarRows(): Promise<DemoRows> {
  const folder = mkdtempSync(join(tmpdir(), 'outyard-ossar-'));
  const book = await openDemo(demoBook('ossar', folder));
  try {
    const { factorFacts: facts } = await lossAnswersIn(book, await book.today(day('2026-06-01')));
    return { facts, rows: chosenRows(facts, undefined, 'all', seasonsFrom(facts)).rows };
  } finally {
    await book.store.close();
    rmSync(folder, { recursive: true });
  }
}

/** The same colonies, with the fates of each winter dealt out anew: as many lost, but which ones is chance. */
export function shuffled(rows: readonly WinterRow[], random: SeededRandom): WinterRow[] {
  const fates = new Map<number, Fate[]>();
  for (const [season, own] of Map.groupBy(rows, ({ season }) => season)) fates.set(season, random.shuffled(own.flatMap(({ fate }) => (fate === 'left' ? [] : [fate]))));
  return rows.map((row) => (row.fate === 'left' ? row : { ...row, fate: fates.get(row.season)?.pop() ?? row.fate }));
}

/** How many of so many shuffles have a group that seems to differ, every comparison of the table allowed for. */
export function falseFindings({ facts, rows }: DemoRows, times: number, seed: number): number {
  const random = new SeededRandom(seed);
  const factors = factorsFor(facts);
  let found = 0;
  for (let time = 0; time < times; time += 1) {
    const table = riskTable(shuffled(rows, random), factors, { fewestLosses: 5, few: 10 });
    if (table.some(({ groups }) => groups.some(({ pHolm }) => pHolm !== null && pHolm < 0.05))) found += 1;
  }
  return found;
}
