import { describe, expect, test } from 'vitest';
import type { LedgerRow } from '#shared/contract/losses.ts';
import { standingRows } from '#core/demo/demoOperation.ts';
import { ossarSeed } from '#core/demo/ossarPlan.ts';
import { simulateOssar } from '#core/demo/simulateOssar.ts';
import { enterActByAct } from './operationChecks.ts';
import type { Life } from './recordChecker.ts';

const { operation, truth } = simulateOssar(ossarSeed);
const rows = standingRows(operation);

function seasonOf(date: string): number {
  return date.slice(5) >= '04-01' ? Number(date.slice(0, 4)) : Number(date.slice(0, 4)) - 1;
}

/** Where a colony stood when the day began. */
function yardAtDawn(life: Life, date: string): string {
  return life.moves.filter((move) => move.date < date).at(-1)?.to ?? life.startYard;
}

function aliveAtDawn(life: Life, date: string): boolean {
  return life.start < date && (life.end === null || life.end >= date);
}

/** The season ledger made from the lives that the rows tell of. */
function ledgerOf(lives: readonly Life[]): LedgerRow[] {
  const lines = new Map<string, LedgerRow>();
  const add = (season: number, yard: string, what: Exclude<keyof LedgerRow, 'season' | 'yard'>) => {
    const key = `${season} ${yard}`;
    const line = lines.get(key) ?? {
      season, yard, opening: 0, packages: 0, nucs: 0, swarms: 0, splits: 0, boughtColonies: 0, movedIn: 0, movedOut: 0, sold: 0, given: 0,
      combined: 0, absconded: 0, lostSummer: 0, lostWinter: 0, closing: 0, aliveOn1October: 0,
    };
    lines.set(key, { ...line, [what]: line[what] + 1 });
  };
  const origins = { package: 'packages', nuc: 'nucs', swarm: 'swarms', split: 'splits' } as const;
  for (const life of lives) {
    add(seasonOf(life.start), life.startYard, origins[life.origin as keyof typeof origins]);
    for (const move of life.moves) {
      add(seasonOf(move.date), move.from, 'movedOut');
      add(seasonOf(move.date), move.to, 'movedIn');
    }
    if (life.end !== null) {
      const winter = life.end.slice(5) >= '10-01' || life.end.slice(5) < '04-01';
      add(seasonOf(life.end), life.yard, life.how === 'lost' ? (winter ? 'lostWinter' : 'lostSummer') : (life.how as 'sold' | 'given' | 'combined' | 'absconded'));
    }
    for (let season = 2021; season <= 2026; season += 1) {
      if (aliveAtDawn(life, `${season}-04-01`)) add(season, yardAtDawn(life, `${season}-04-01`), 'opening');
      if (aliveAtDawn(life, `${season}-10-01`)) add(season, yardAtDawn(life, `${season}-10-01`), 'aliveOn1October');
      const close = season === 2026 ? '2026-11-26' : `${season + 1}-04-01`;
      if (aliveAtDawn(life, close)) add(season, yardAtDawn(life, close), 'closing');
    }
  }
  return [...lines.values()].sort((a, b) => a.season - b.season || (a.yard < b.yard ? -1 : 1));
}

describe('what the simulator counted', () => {
  test('is what the rows say, season by season and yard by yard', () => {
    const lives = enterActByAct(operation).checker.lives();
    expect(ledgerOf(lives)).toEqual(truth.ledger);
    expect(lives.filter((life) => life.end === null)).toHaveLength(truth.living);
  });

  test('balances in every line', () => {
    for (const line of truth.ledger) {
      const come = line.opening + line.packages + line.nucs + line.swarms + line.splits + line.boughtColonies + line.movedIn;
      const gone = line.movedOut + line.sold + line.given + line.combined + line.absconded + line.lostSummer + line.lostWinter;
      expect(come - gone, `${line.season} ${line.yard}`).toBe(line.closing);
    }
  });

  test('agrees on every colony: start, end, how, and pounds of honey', () => {
    const told = enterActByAct(operation).checker.lives().map(({ label, start, end, how, startYard, origin }) => ({ label, start, end, how, yard: startYard, origin }));
    const known = truth.colonies.map(({ label, start, end, how, yard, origin }) => ({ label, start, end, how, yard, origin }));
    const order = (a: { label: string; start: string }, b: { label: string; start: string }) => (a.label + a.start < b.label + b.start ? -1 : 1);
    expect(told.sort(order)).toEqual(known.sort(order));
    const weighed = new Map<string, number>();
    const together = new Map<string, number>();
    for (const row of rows) {
      if (row.entry !== 'harvest') continue;
      const into = row.colony === undefined ? together : weighed;
      const key = row.colony === undefined ? `${seasonOf(row.date ?? '')} ${row.yard}` : `${seasonOf(row.date ?? '')} ${row.colony}`;
      into.set(key, (into.get(key) ?? 0) + Number(row.gross) - Number(row.tare));
    }
    const claimed = truth.colonies.flatMap((colony) => Object.entries(colony.honeyLb).map(([season, lb]) => [`${season} ${colony.label}`, lb] as const));
    expect(claimed.length).toBe(weighed.size);
    for (const [key, lb] of claimed) expect(weighed.get(key), key).toBeCloseTo(lb, 1);
    const yards = new Map<string, number>();
    for (const { season, yard, lb } of truth.yardHoneyLb) yards.set(`${season} ${yard}`, (yards.get(`${season} ${yard}`) ?? 0) + lb);
    for (const [key, lb] of yards) expect(together.get(key), key).toBeCloseTo(lb, 1);
    expect(yards.size).toBe(together.size);
  });
});
