import { describe, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import { standingRows } from '#core/demo/demoOperation.ts';
import { ossarSeed } from '#core/demo/ossarPlan.ts';
import { simulateOssar } from '#core/demo/simulateOssar.ts';
import { enterActByAct } from './operationChecks.ts';

const { operation, truth } = simulateOssar(ossarSeed);
const rows = standingRows(operation);
const of = (kind: string) => rows.filter((row) => row.entry === kind);
const autumns = truth.colonies.flatMap((colony) => colony.autumns).filter((autumn) => autumn.lost !== null);
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const lossRate = (which: (autumn: (typeof autumns)[number]) => boolean) => mean(autumns.filter(which).map((autumn) => (autumn.lost === true ? 1 : 0)));

describe('the colonies of Ossar Valley', () => {
  test('grew from fourteen to about ninety-six', () => {
    const first = of('install').filter((row) => row.date?.startsWith('2021'));
    expect(first.filter((row) => row.origin === 'package')).toHaveLength(8);
    expect(first.filter((row) => row.origin === 'nuc')).toHaveLength(6);
    expect(Math.abs(truth.living - 96)).toBeLessThanOrEqual(6);
    for (const yard of operation.yards) {
      const living = truth.ledger.find((line) => line.season === 2026 && line.yard === yard.code)?.closing ?? 0;
      expect(living, yard.code).toBeGreaterThan(0);
      expect(living, yard.code).toBeLessThanOrEqual(yard.room ?? 0);
    }
  });

  test('died each full winter at a rate between 14 and 46 per cent', () => {
    const full = truth.winters.filter((winter) => winter.complete);
    expect(full.map((winter) => winter.season)).toEqual([2021, 2022, 2023, 2024, 2025]);
    for (const { season, lost, aliveOn1October } of full) {
      expect(lost / aliveOn1October, String(season)).toBeGreaterThanOrEqual(0.14);
      expect(lost / aliveOn1October, String(season)).toBeLessThanOrEqual(0.46);
    }
  });

  test('died more often of what the generator says they die of', () => {
    const lost = autumns.filter((autumn) => autumn.lost);
    const lived = autumns.filter((autumn) => !autumn.lost);
    expect(mean(lost.map((autumn) => Math.log(autumn.mites)))).toBeGreaterThan(mean(lived.map((autumn) => Math.log(autumn.mites))));
    expect(mean(lost.map((autumn) => autumn.storesLb))).toBeLessThan(mean(lived.map((autumn) => autumn.storesLb)));
    expect(lossRate((autumn) => autumn.queenAge >= 1)).toBeGreaterThan(lossRate((autumn) => autumn.queenAge === 0));
    for (const { code } of operation.yards) {
      if (code !== 'NS') expect(lossRate((autumn) => autumn.yard === 'NS'), code).toBeGreaterThan(lossRate((autumn) => autumn.yard === code));
    }
  });

  test('show the mites of the dead in the washes too', () => {
    const ends = new Map(truth.colonies.map((colony) => [`${colony.label} ${colony.start}`, colony]));
    const per100 = { lost: [] as number[], lived: [] as number[] };
    for (const row of of('mites')) {
      const [year, monthDay] = [row.date?.slice(0, 4), row.date?.slice(5) ?? ''];
      if (monthDay < '08-01' || monthDay > '09-05' || year === '2026') continue;
      const colony = [...ends.values()].find((one) => one.label === row.colony && one.start <= (row.date ?? '') && (one.end === null || one.end >= (row.date ?? '')));
      const fate = colony?.autumns.find((autumn) => String(autumn.season) === year);
      if (fate !== undefined) per100[fate.lost === true ? 'lost' : 'lived'].push((100 * Number(row.mites)) / Number(row.bees));
    }
    expect(per100.lost.length).toBeGreaterThan(20);
    expect(mean(per100.lost)).toBeGreaterThan(mean(per100.lived));
  });

  test('give the most goldenrod honey at Kiln Field', () => {
    const second = new Map<string, number[]>();
    for (const row of of('harvest')) {
      if (row.lot?.endsWith('-2') !== true || row.colony === undefined) continue;
      second.set(row.yard ?? '', [...(second.get(row.yard ?? '') ?? []), Number(row.gross) - Number(row.tare)]);
    }
    const total = (yard: string) => (second.get(yard) ?? []).reduce((sum, lb) => sum + lb, 0);
    for (const yard of second.keys()) if (yard !== 'KF') expect(total('KF'), yard).toBeGreaterThan(total(yard));
    expect(total('KF')).toBeGreaterThan(500);
  });
});

describe('the records of Ossar Valley', () => {
  test('wash about two colonies in five, 300 bees or so', () => {
    expect(mean([...autumns].map((autumn) => (autumn.washed ? 1 : 0)))).toBeGreaterThan(0.36);
    expect(mean([...autumns].map((autumn) => (autumn.washed ? 1 : 0)))).toBeLessThan(0.44);
    let possible = 0;
    let washed = 0;
    for (let year = 2021; year <= 2026; year += 1) {
      const living = truth.colonies.filter((colony) => colony.start < `${year}-08-01` && (colony.end === null || colony.end > `${year}-09-30`));
      const counted = new Set(of('mites').filter((row) => row.date?.startsWith(String(year))).map((row) => row.colony));
      possible += living.length;
      washed += living.filter((colony) => counted.has(colony.label)).length;
    }
    expect(washed / possible).toBeGreaterThan(0.33);
    expect(washed / possible).toBeLessThan(0.47);
    expect(mean(of('mites').map((row) => Number(row.bees)))).toBeCloseTo(300, -1);
  });

  test('weigh honey by super in four yards and by yard in two, and measure water in about half of the lots', () => {
    const byColony = new Set(of('harvest').filter((row) => row.colony !== undefined).map((row) => row.yard));
    const byYard = new Set(of('harvest').filter((row) => row.colony === undefined).map((row) => row.yard));
    expect([...byColony].sort()).toEqual(['KF', 'LB', 'NS', 'QY']);
    expect([...byYard].sort()).toEqual(['MR', 'OO']);
    const lots = new Map(of('harvest').map((row) => [row.lot, row.moisture !== undefined]));
    const share = [...lots.values()].filter(Boolean).length / lots.size;
    expect(share).toBeGreaterThan(0.3);
    expect(share).toBeLessThan(0.7);
  });

  test('give each colony a pound or a hundred, not a ton', () => {
    const crops = truth.colonies.flatMap((colony) => Object.values(colony.honeyLb));
    expect(Math.max(...crops)).toBeLessThan(260);
    // US average yields of 47 to 65 lb a colony (USDA NASS, Honey, 2011 to 2024), producing colonies only.
    expect(mean(crops)).toBeGreaterThan(35);
    expect(mean(crops)).toBeLessThan(100);
  });

  test('have hours on about two trips out of three', () => {
    const trips = new Set(rows.filter((row) => row.yard !== undefined).map((row) => `${row.date} ${row.yard}`));
    const written = new Set(of('work').filter((row) => row.yard !== undefined).map((row) => `${row.date} ${row.yard}`));
    expect(written.size / trips.size).toBeGreaterThan(0.58);
    expect(written.size / trips.size).toBeLessThan(0.75);
  });

  test('hold the odd things of real life', () => {
    const losses = of('loss');
    const withCause = (cause: string) => losses.filter((row) => row.cause?.split('; ').includes(cause));
    expect(withCause('robbing')).toHaveLength(2);
    expect(withCause('flood').every((row) => row.yard === 'LB' && row.date?.startsWith('2023'))).toBe(true);
    expect(withCause('flood').length).toBeGreaterThan(0);
    expect(of('install').filter((row) => row.origin === 'swarm')).toHaveLength(1);
    expect(of('move').filter((row) => row.date === '2023-07-16' && row.to_yard === 'KF').length).toBeGreaterThan(3);
    expect(of('combine').length).toBeGreaterThan(3);
    expect(of('sale').filter((row) => row.colony !== undefined).length).toBeGreaterThan(3);
    expect(of('requeen').length).toBeGreaterThan(20);
    const months = new Set(of('split').map((row) => row.date?.slice(5, 7)));
    expect([...months].sort()).toEqual(['05', '06']);
    const lives = enterActByAct(operation).checker.lives();
    const reused = lives.filter((life) => lives.some((later) => later.label === life.label && later.start > life.start));
    expect(reused.length).toBeGreaterThan(10);
    const entered = operation.acts.filter((act) => 'rows' in act);
    expect(entered.filter((act) => act.rows.some((row) => row.date !== act.at.slice(0, 10))).length).toBeGreaterThan(20);
  });

  test('strike a mistake, and strike losses found in February once their cause is known two weeks later', () => {
    const struck = operation.acts.flatMap((act) => {
      if (!('strike' in act)) return [];
      const before = operation.acts[act.strike.act];
      const row = before !== undefined && 'rows' in before ? before.rows[act.strike.row] : undefined;
      return row === undefined ? [] : [{ at: act.at, row, reason: act.reason }];
    });
    const causes = struck.filter(({ row }) => row.entry === 'loss');
    expect(causes.length).toBeGreaterThan(0);
    for (const { at, row } of causes) {
      expect(row.cause).toBeUndefined();
      expect(row.date?.slice(5, 7)).toBe('02');
      const anew: Cells | undefined = of('loss').find((other) => other.date === row.date && other.colony === row.colony);
      expect(anew?.cause ?? '').not.toBe('');
      const waited = (Date.parse(at.slice(0, 10)) - Date.parse(row.date ?? '')) / 86_400_000;
      expect(waited).toBeGreaterThanOrEqual(13);
      expect(waited).toBeLessThanOrEqual(17);
    }
    expect(struck.filter(({ row }) => row.entry !== 'loss').map(({ row }) => row.entry)).toEqual(['mites']);
  });

  test('look at each colony a handful of times a season, each yard every two or three weeks', () => {
    const looks = new Map<string, number>();
    for (const row of of('inspection')) looks.set(`${row.date?.slice(0, 4)} ${row.colony}`, (looks.get(`${row.date?.slice(0, 4)} ${row.colony}`) ?? 0) + 1);
    const wintered = truth.colonies.filter((colony) => colony.start < '2025-04-01' && (colony.end === null || colony.end > '2025-10-15')).map((colony) => looks.get(`2025 ${colony.label}`) ?? 0);
    expect(mean(wintered)).toBeGreaterThan(6);
    expect(mean(wintered)).toBeLessThan(9.5);
  });

  test('pay a little more each year, nucs about a third more than packages', () => {
    const price = (origin: string, year: number) => Number(of('install').find((row) => row.origin === origin && row.date?.startsWith(String(year)))?.price);
    for (let year = 2022; year <= 2026; year += 1) {
      expect(price('package', year)).toBeGreaterThan(price('package', year - 1));
      expect(price('nuc', year) / price('package', year)).toBeGreaterThan(1.25);
      expect(price('nuc', year) / price('package', year)).toBeLessThan(1.4);
    }
  });

  test('name nobody: sellers, lines and notes are the invented ones', () => {
    const given = new Set(rows.flatMap((row) => [row.supplier, row.queen_source]).filter((name) => name !== undefined));
    expect([...given].sort()).toEqual(['Bramble', 'Kestrel', 'Ossar', 'Sandel Road Bees', 'Tarn', 'Upper Ferry Apiary', 'farm store']);
    const capitals = new Set(rows.flatMap((row) => (row.note ?? '').match(/(?<=[a-z,] )[A-Z][a-z]+/g) ?? []));
    expect([...capitals].sort()).toEqual(['Apiary', 'April', 'Bees', 'Ferry', 'Field', 'Kiln', 'May', 'Road', 'Sandel', 'Upper'].filter((word) => capitals.has(word)));
  });
});
