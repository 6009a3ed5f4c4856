import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    seed: number;
  }
}

/** Used when nobody asks for another: two runs of the suite then try the same cases. */
const usual = 20_260_401;

/** Seed of all property tests: `OUTYARD_SEED` if it is a whole number, a fresh one for `random`, else the usual one. */
export function seedFrom(asked: string | undefined, draw: () => number): number {
  if (asked === undefined || asked === '') return usual;
  if (asked === 'random') return Math.floor(draw() * 0x7fff_ffff);
  const seed = Number(asked);
  if (!Number.isSafeInteger(seed)) throw new Error(`OUTYARD_SEED is "${asked}"; give a whole number, or the word random.`);
  return seed;
}

/** Each project of the suite comes through here; the person needs to be told once. */
const saidMark = 'OUTYARD_SEED_SAID';

/** Chooses the seed once for the whole run, says which it is, and hands it to every test file. */
export function setup(project: TestProject): void {
  const seed = seedFrom(process.env['OUTYARD_SEED'], Math.random);
  process.env['OUTYARD_SEED'] = String(seed);
  project.provide('seed', seed);
  if (process.env[saidMark] === undefined) console.log(`Seed of the property tests: ${seed} (try it again with OUTYARD_SEED=${seed}, a fresh one with OUTYARD_SEED=random)`);
  process.env[saidMark] = 'yes';
}
