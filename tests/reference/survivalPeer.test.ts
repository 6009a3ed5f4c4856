import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { coxModel, type CoxModel } from '#core/stats/coxModel.ts';
import { kaplanMeier } from '#core/stats/kaplanMeier.ts';
import { logRank } from '#core/stats/logRank.ts';
import { splitSpans } from '#core/stats/splitSpans.ts';
import { SeededRandom } from '#core/demo/seededRandom.ts';

// R's survival package (Therneau), where Rscript is on the machine (Debian: r-base-core r-cran-survival).
const peer = fileURLToPath(new URL('survivalPeer.R', import.meta.url));
const there = spawnSync('Rscript', ['-e', 'library(survival)'], { encoding: 'utf8' }).status === 0;
const sets = 200;

interface Colony {
  readonly yard: number;
  readonly entry: number;
  readonly exit: number;
  readonly status: number;
  readonly mites: number;
  readonly treated: number;
  /** A second count and the day it was made; some fall on the exit or after it. */
  readonly washDay: number | null;
  readonly wash: number | null;
}

interface Fitted {
  readonly rows: number;
  readonly strata: number[];
  readonly strataSe: number[];
  readonly strataLoglik: number;
  readonly split: number[];
  readonly splitSe: number[];
  readonly splitLoglik: number;
  readonly time: number[];
  readonly survival: number[];
  readonly low: (number | null)[];
  readonly high: (number | null)[];
  readonly chiSquare: number;
  readonly cox: number[];
  readonly se: number[];
  readonly loglik: number;
}

test.runIf(there)('Kaplan-Meier, log-rank and Cox, plain, with strata and with rows cut at each wash, agree with R on 200 random sets of colonies, many entering late', { timeout: 120_000 }, () => {
  const made = Array.from({ length: sets }, (_, set) => colonies(set));
  const folder = mkdtempSync(join(tmpdir(), 'outyard-peer-'));
  try {
    const file = join(folder, 'sets.csv');
    const lines = made.flatMap((rows, set) => rows.map((row) => [set, row.yard, row.entry, row.exit, row.status, row.mites, row.treated, row.washDay ?? 'NA', row.wash ?? 'NA'].join(',')));
    writeFileSync(file, `set,yard,entry,exit,status,mites,treated,washDay,wash\n${lines.join('\n')}\n`);
    const run = spawnSync('Rscript', [peer, file], { encoding: 'utf8', maxBuffer: 1e8 });
    expect(run.status, run.stderr).toBe(0);
    const fitted = run.stdout.trim().split('\n').map((line) => JSON.parse(line) as Fitted);
    expect(fitted).toHaveLength(sets);
    let worst = 0;
    let diverging = 0;
    const hold = (what: string, ours: readonly (number | null | undefined)[], theirs: readonly (number | null)[]) => {
      expect(ours, what).toHaveLength(theirs.length);
      for (const [at, value] of theirs.entries()) {
        const own = ours[at] ?? null;
        // R prints a band of 0 to 0 or none at all where the curve is at 0; ours has none there.
        if (value === null || own === null) continue;
        const apart = Math.abs(own - value) / Math.max(1e-9, Math.abs(value));
        worst = Math.max(worst, apart);
        expect(apart, `${what}: ours ${own}, R ${value}`).toBeLessThan(1e-6);
      }
    };
    for (const [set, theirs] of fitted.entries()) {
      const rows = made[set] ?? [];
      const of = (key: Exclude<keyof Colony, 'washDay' | 'wash'>) => rows.map((row) => row[key]);
      const spans = { entry: of('entry'), exit: of('exit'), status: of('status') };
      const { table } = kaplanMeier(spans);
      hold(`set ${set}, time`, table.time, theirs.time);
      hold(`set ${set}, survival`, table.survival, theirs.survival);
      hold(`set ${set}, low`, table.lowerLogLog, theirs.low);
      hold(`set ${set}, high`, table.upperLogLog, theirs.high);
      const since = { entry: rows.map(() => 0), exit: rows.map((row) => row.exit - row.entry), status: of('status') };
      hold(`set ${set}, log-rank`, [logRank(since, of('yard')).chiSquare], [theirs.chiSquare]);
      const holdCox = (what: string, model: CoxModel | null, coefficients: readonly number[], errors: readonly number[], loglik: number) => {
        const terms = model?.terms ?? [];
        if (terms.some((term) => term.diverges)) {
          // The coefficient runs to infinity and each program stops somewhere on the way; only its sign means anything.
          for (const [at, term] of terms.entries()) if (term.diverges) expect(Math.sign(term.coefficient)).toBe(Math.sign(coefficients[at] ?? 0));
          diverging += 1;
          return;
        }
        hold(`set ${set}, ${what}`, terms.map((term) => term.coefficient), coefficients);
        hold(`set ${set}, ${what}, errors`, terms.map((term) => term.se), errors);
        hold(`set ${set}, ${what}, log-likelihood`, [model?.loglik], [loglik]);
      };
      const treated = { name: 'treated', values: of('treated') };
      const covariates = [{ name: 'mites', values: of('mites') }, treated];
      holdCox('Cox', coxModel(spans, covariates), theirs.cox, theirs.se, theirs.loglik);
      holdCox('strata', coxModel(spans, covariates, of('yard')), theirs.strata, theirs.strataSe, theirs.strataLoglik);
      const pieces = splitSpans(spans, rows.map((row) => [{ time: row.entry, value: row.mites }, ...(row.washDay === null || row.wash === null ? [] : [{ time: row.washDay, value: row.wash }])]));
      expect(pieces.row.length, `set ${set}, rows`).toBe(theirs.rows);
      const ofRow = (values: readonly number[]) => pieces.row.map((row) => values[row] ?? NaN);
      holdCox('rows cut', coxModel(pieces, [{ name: 'now', values: pieces.value }, { name: 'treated', values: ofRow(of('treated')) }], ofRow(of('yard'))), theirs.split, theirs.splitSe, theirs.splitLoglik);
    }
    console.info(`largest relative difference from R over ${sets} sets, 600 Cox models among them: ${worst.toExponential(1)}`);
    expect(worst).toBeLessThan(1e-6);
    expect(diverging).toBeLessThan((3 * sets) / 10);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

/** Between 30 and 120 colonies in three yards, days with ties, two in five watched only from later on. */
function colonies(seed: number): Colony[] {
  const source = new SeededRandom(seed + 1);
  const random = () => source.next();
  const rows = 30 + Math.floor(random() * 90);
  return Array.from({ length: rows }, () => {
    const entry = random() < 0.4 ? Math.floor(random() * 200) : 0;
    const mites = Math.floor(random() * 80) / 10;
    const treated = random() < 0.5 ? 1 : 0;
    const life = 1 + Math.floor((400 * (1 + treated) * random()) / (1 + 0.2 * mites) / (1.02 - random()));
    const watched = Math.min(life, 20 + Math.floor(random() * 300));
    const colony = { yard: Math.floor(random() * 3), entry, exit: entry + watched, status: watched === life ? 1 : 0, mites, treated };
    if (random() < 0.4) return { ...colony, washDay: null, wash: null };
    // On or after the entry, so that the count of the entry is not older; many on or after the exit.
    return { ...colony, washDay: entry + 1 + Math.floor(random() * watched * 1.3), wash: Math.floor(random() * 80) / 10 };
  });
}
