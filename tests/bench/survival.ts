import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { coxModel } from '#core/stats/coxModel.ts';
import { kaplanMeierByGroup } from '#core/stats/kaplanMeierByGroup.ts';
import { logRank } from '#core/stats/logRank.ts';
import { colonyRows, type ColonyRows } from './colonyRows.ts';

// npm run -s bench -- survival [rows ...]
// Kaplan-Meier by yard, log-rank and Cox beside R's survival package on the same rows, in one run on one machine.
// Needs Rscript with the survival package (Debian: r-base-core r-cran-survival).
const sizes = process.argv.length > 2 ? process.argv.slice(2).map(Number) : [10_000, 100_000, 1_000_000];
const seed = 20_240_615;
const methods = ['kaplanMeier', 'logRank', 'cox'] as const;

interface Peer {
  readonly seconds: Record<(typeof methods)[number], number>;
  readonly last: readonly number[];
  readonly chiSquare: number;
  readonly cox: readonly number[];
}

function csvOf(rows: ColonyRows): string {
  const lines = ['yard,entry,exit,status,mites,queenAge,treated'];
  for (let row = 0; row < rows.entry.length; row += 1) {
    lines.push(`${rows.yard[row]},${rows.entry[row]},${rows.exit[row]},${rows.status[row]},${rows.mites[row]},${rows.queenAge[row]},${rows.treated[row]}`);
  }
  return `${lines.join('\n')}\n`;
}

function middleOfThree(run: () => unknown): number {
  const taken = [0, 1, 2].map(() => {
    const start = performance.now();
    run();
    return (performance.now() - start) / 1000;
  });
  return taken.toSorted((a, b) => a - b)[1] ?? Number.NaN;
}

function agree(what: string, ours: readonly number[], theirs: readonly number[]): void {
  const apart = ours.length !== theirs.length || ours.some((value, at) => !(Math.abs(value - (theirs[at] ?? Number.NaN)) <= 1e-6 * Math.max(1e-12, Math.abs(theirs[at] ?? 0))));
  if (apart) throw new Error(`${what}: ours ${ours.join(', ')}, R ${theirs.join(', ')}`);
}

const folder = mkdtempSync(join(tmpdir(), 'outyard-survival-'));
let worst = 0;
try {
  for (const size of sizes) {
    const rows = colonyRows(size, seed);
    const file = join(folder, `${size}.csv`);
    writeFileSync(file, csvOf(rows));
    const run = spawnSync('Rscript', [fileURLToPath(new URL('survivalPeer.R', import.meta.url)), file], { encoding: 'utf8' });
    if (run.error !== undefined || run.status !== 0) throw new Error(`Rscript with the survival package is needed (Debian: r-base-core r-cran-survival). ${run.stderr ?? ''}`);
    const peer = JSON.parse(run.stdout) as Peer;
    const spans = { entry: rows.entry, exit: rows.exit, status: rows.status };
    const since = { entry: new Float64Array(size), exit: rows.exit.map((exit, at) => exit - (rows.entry[at] ?? 0)), status: rows.status };
    const covariates = (['mites', 'queenAge', 'treated'] as const).map((name) => ({ name, values: rows[name] }));

    const curves = [...kaplanMeierByGroup(spans, rows.yard)].toSorted(([a], [b]) => Number(a) - Number(b));
    agree('Kaplan-Meier', curves.map(([, curve]) => curve.table.survival.at(-1) ?? 1), peer.last);
    agree('log-rank', [logRank(since, rows.yard).chiSquare ?? Number.NaN], [peer.chiSquare]);
    agree('Cox', (coxModel(spans, covariates)?.terms ?? []).map((term) => term.coefficient), peer.cox);

    const ours = {
      kaplanMeier: middleOfThree(() => kaplanMeierByGroup(spans, rows.yard)),
      logRank: middleOfThree(() => logRank(since, rows.yard)),
      cox: middleOfThree(() => coxModel(spans, covariates)),
    };
    for (const method of methods) {
      const ratio = ours[method] / peer.seconds[method];
      worst = Math.max(worst, ratio);
      console.log(`${String(size).padStart(9)} rows  ${method.padEnd(12)} ours ${ours[method].toFixed(3)} s, R ${peer.seconds[method].toFixed(3)} s, ours/R ${ratio.toFixed(2)}`);
    }
  }
  console.log(`worst ours/R: ${worst.toFixed(2)}`);
} finally {
  rmSync(folder, { recursive: true });
}
