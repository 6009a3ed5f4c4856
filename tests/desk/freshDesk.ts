import { afterEach, beforeEach, expect } from 'vitest';
import { contract, type InputOf, type OperationName, type OutputOf } from '#shared/contract/contract.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

/** A desk without a book before each test, and nothing left of it after. */
export function freshDesk() {
  let scratch: ReturnType<typeof scratchFolder>;
  let trial: ReturnType<typeof trialDesk>;
  beforeEach(() => {
    scratch = scratchFolder();
    trial = trialDesk(scratch.folder);
  });
  afterEach(async () => {
    await trial.desk.close();
    scratch.remove();
  });
  return {
    /** The answer, held against the shape that the contract promises. */
    async ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
      const value = await trial.ask(name, input);
      expect(contract[name].output.parse(value)).toEqual(value);
      return value;
    },
    get answer() {
      return trial.answer;
    },
    get desk() {
      return trial.desk;
    },
  };
}
