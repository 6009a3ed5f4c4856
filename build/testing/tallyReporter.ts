import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Reporter } from 'vitest/node';
import type { Tally } from './tally.ts';

/** Writes what the run came to into one small file, for whoever started it. */
export class TallyReporter implements Reporter {
  readonly #file: string;

  constructor(file: string) {
    this.#file = file;
  }

  onTestRunEnd: NonNullable<Reporter['onTestRunEnd']> = (modules, unhandledErrors) => {
    let passed = 0;
    let failed = unhandledErrors.length;
    const notRun: string[] = [];
    for (const module of modules) {
      let failedHere = 0;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed += 1;
        else if (state === 'skipped') notRun.push(`${module.relativeModuleId} > ${test.fullName}`);
        else failedHere += 1;
      }
      // A file that does not load, or whose hooks fail, has no failed test of its own; it must still count.
      failed += failedHere === 0 && !module.ok() ? 1 : failedHere;
    }
    mkdirSync(dirname(this.#file), { recursive: true });
    const tally: Tally = { passed, failed, notRun };
    writeFileSync(this.#file, JSON.stringify(tally));
  };
}
