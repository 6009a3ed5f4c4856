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
//
// What is timed, alike on both sides: the clock on the wall around one call, from columns in memory to the result, each
// side in one process that has no other work meanwhile (reading the rows, printing and R's gc() lie outside). The first
// call of each method is compared, not counted: R has its packages and compiled code to find, this engine its code to
// compile. The figure is the median of the same number of calls that follow. What the first call took stands beside
// it, because a program that was just opened takes that long; the last line is the worst of the medians.
const sizes = process.argv.length > 2 ? process.argv.slice(2).map(Number) : [10_000, 100_000, 1_000_000];
const seed = 20_240_615;
const methods = ['kaplanMeier', 'logRank', 'cox'] as const;

/** Calls of which the median is taken: many where one is so short that chance has a share in it. */
const callsFor = (size: number) => (size < 1_000_000 ? 15 : 3);

interface Peer {
  readonly seconds: Record<(typeof methods)[number], number>;
  readonly first: Record<(typeof methods)[number], number>;
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

function timed<T>(run: () => T): { readonly seconds: number; readonly value: T } {
  const start = performance.now();
  const value = run();
  return { seconds: (performance.now() - start) / 1000, value };
}

function median(run: () => unknown, calls: number): number {
  const taken = Array.from({ length: calls }, () => timed(run).seconds).toSorted((a, b) => a - b);
  return taken[(calls - 1) / 2] ?? Number.NaN;
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
    const run = spawnSync('Rscript', [fileURLToPath(new URL('survivalPeer.R', import.meta.url)), file, String(callsFor(size))], { encoding: 'utf8' });
    if (run.error !== undefined || run.status !== 0) throw new Error(`Rscript with the survival package is needed (Debian: r-base-core r-cran-survival). ${run.stderr ?? ''}`);
    const peer = JSON.parse(run.stdout) as Peer;
    const spans = { entry: rows.entry, exit: rows.exit, status: rows.status };
    const since = { entry: new Float64Array(size), exit: rows.exit.map((exit, at) => exit - (rows.entry[at] ?? 0)), status: rows.status };
    const covariates = (['mites', 'queenAge', 'treated'] as const).map((name) => ({ name, values: rows[name] }));

    const calls = {
      kaplanMeier: () => kaplanMeierByGroup(spans, rows.yard),
      logRank: () => logRank(since, rows.yard),
      cox: () => coxModel(spans, covariates),
    };

    const [curves, test, model] = [timed(calls.kaplanMeier), timed(calls.logRank), timed(calls.cox)];
    const first = { kaplanMeier: curves.seconds, logRank: test.seconds, cox: model.seconds };
    agree('Kaplan-Meier', [...curves.value].toSorted(([a], [b]) => Number(a) - Number(b)).map(([, curve]) => curve.table.survival.at(-1) ?? 1), peer.last);
    agree('log-rank', [test.value.chiSquare ?? Number.NaN], [peer.chiSquare]);
    agree('Cox', (model.value?.terms ?? []).map((term) => term.coefficient), peer.cox);

    for (const method of methods) {
      const ours = median(calls[method], callsFor(size));
      const ratio = ours / peer.seconds[method];
      worst = Math.max(worst, ratio);
      console.log(`${String(size).padStart(9)} rows  ${method.padEnd(12)} ours ${ours.toFixed(4)} s, R ${peer.seconds[method].toFixed(4)} s, ours/R ${ratio.toFixed(2)}   (first call: ours ${first[method].toFixed(3)} s, R ${peer.first[method].toFixed(3)} s)`);
    }
  }
  console.log(`worst ours/R: ${worst.toFixed(2)}`);
} finally {
  rmSync(folder, { recursive: true });
}
