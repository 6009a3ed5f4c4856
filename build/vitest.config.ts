import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './testing/longestFirst.ts';
import { TallyReporter } from './testing/tallyReporter.ts';

/** These drive a real browser, a real shell or real processes: after all others and two files at a time, so that none starves another. */
const windows = ['tests/screens/**/*.test.{ts,tsx}', 'tests/shell/**/*.test.{ts,tsx}', 'tests/hosts/**/*.test.{ts,tsx}'];
const all = ['tests/**/*.test.{ts,tsx}'];

const root = fileURLToPath(new URL('..', import.meta.url));
/** The many processes that tests start read their modules ready made from here, each the text of a source as it is now. */
const env = { NODE_COMPILE_CACHE: `${root}out/compiled` };

const common = {
  // Files share their worker's modules, and a browser: no test changes what is another's. Starting anew for each file took a fifth of the whole run.
  isolate: false,
  globalSetup: ['build/testing/seed.ts'],
  setupFiles: ['build/testing/setup.ts'],
  // Long enough for a machine that has other work to do; what never comes fails all the same.
  testTimeout: 120_000,
  hookTimeout: 120_000,
  expect: { poll: { timeout: 15_000 } },
};
/** Left to itself the runner spares one processor, half of a machine that has two; what runs the tests has next to nothing to do meanwhile. */
const maxWorkers = Math.max(2, availableParallelism() - 1);

/** What deals with days is run once more at both ends of the world, so that no day ever slips. */
const zones = ['Pacific/Pago_Pago', 'Pacific/Kiritimati'];
const aboutDays = ['tests/shared/**/*.test.ts', 'tests/calendar/**/*.test.ts'];
const tallyFile = process.env['OUTYARD_TALLY'];

export default defineConfig({
  root,
  test: {
    sequence: { sequencer: LongestFirst },
    reporters: tallyFile === undefined ? ['default'] : ['default', new TallyReporter(tallyFile)],
    projects: [
      { test: { ...common, env, maxWorkers, name: 'rooms', include: all, exclude: windows, sequence: { groupOrder: 0 } } },
      ...zones.map((zone) => ({ test: { ...common, maxWorkers, name: zone, include: aboutDays, env: { ...env, TZ: zone }, sequence: { groupOrder: 0 } } })),
      { test: { ...common, env, name: 'windows', include: windows, environment: './build/testing/endingWell.ts', maxWorkers: 2, sequence: { groupOrder: 1 } } },
    ],
  },
});
