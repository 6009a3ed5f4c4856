import type { Fault } from '#shared/faults.ts';

/** Where a verb's words go: results to the standard output, what went wrong to the error stream. */
export interface Speech {
  /** The result, whole, as it stands. */
  print(text: string): void;
  /** A sentence for the person. */
  complain(sentence: string): void;
}

/** How a command ended; the numbers are its exit codes. */
export const ended = {
  /** Everything was read and is in order. */
  well: 0,
  /** The result is printed in full, but some rows are to sort out or the book is not sound. */
  withFindings: 1,
  /** Nothing could be done; a sentence on the error stream says why. */
  notDone: 2,
} as const;
export type Ended = (typeof ended)[keyof typeof ended];

/** One thing that the command line can do. */
export interface Verb {
  /** What may follow the verb's name. */
  readonly usage: string;
  readonly summary: string;
  run(args: readonly string[], speech: Speech): Promise<Ended>;
}

/** Something in the arguments or the files named that keeps a verb from being done; caught at the frame and said. */
export class CommandError extends Error {
  readonly mend: string | undefined;
  constructor(sentence: string, mend?: string) {
    super(sentence);
    this.name = 'CommandError';
    this.mend = mend;
  }
}

/** The desk's refusal as a command's. */
export function asCommandError(fault: Fault): CommandError {
  const rows = (fault.rows ?? []).slice(0, 20).map((row) => `\n  line ${row.line}: ${row.sentence}`);
  return new CommandError(fault.sentence + rows.join(''), fault.mend);
}
