import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { TallyReporter } from './testing/tallyReporter.ts';

/** These drive a real browser, a real shell or real processes: one file at a time, so that none starves another. */
const oneAtATime = ['tests/screens/**/*.test.{ts,tsx}', 'tests/shell/**/*.test.{ts,tsx}', 'tests/hosts/**/*.test.{ts,tsx}'];
const all = ['tests/**/*.test.{ts,tsx}'];

const common = {
  globalSetup: ['build/testing/seed.ts'],
  setupFiles: ['build/testing/setup.ts'],
  testTimeout: 60_000,
  hookTimeout: 120_000,
};
const tallyFile = process.env['OUTYARD_TALLY'];

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    reporters: tallyFile === undefined ? ['default'] : ['default', new TallyReporter(tallyFile)],
    projects: [
      { test: { ...common, name: 'rooms', include: all, exclude: oneAtATime, sequence: { groupOrder: 0 } } },
      { test: { ...common, name: 'windows', include: oneAtATime, fileParallelism: false, sequence: { groupOrder: 1 } } },
    ],
  },
});
