import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import type { InputOf, OperationName } from '#shared/contract/contract.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';
import { placeDemo } from '#tests/demo/demoCopy.ts';

/** A desk without a book before each test, and nothing left of it after. */
export function freshDesk() {
  const own = scratchDesk();
  beforeEach(own.open);
  afterEach(own.close);
  return own;
}

/** A desk with the demo open, for all tests of a file. */
export function demoDesk() {
  const own = scratchDesk();
  beforeAll(async () => {
    own.open();
    await placeDemo('ossar', own.folder);
    await own.ask('book.demo', { which: 'ossar' });
  });
  afterAll(own.close);
  return own;
}

function scratchDesk() {
  let scratch: ReturnType<typeof scratchFolder>;
  let trial: ReturnType<typeof trialDesk>;
  return {
    open() {
      scratch = scratchFolder();
      trial = trialDesk(scratch.folder);
    },
    async close() {
      await trial.desk.close();
      scratch.remove();
    },
    ask: <Name extends OperationName>(name: Name, input: InputOf<Name>) => trial.askHeld(name, input),
    get answer() {
      return trial.answer;
    },
    get desk() {
      return trial.desk;
    },
    get folder() {
      return scratch.folder;
    },
  };
}
