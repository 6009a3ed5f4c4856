import { writeFileSync } from 'node:fs';
import { pathOf } from '../files.ts';
import { atBook } from '../openDesk.ts';
import { readArguments } from '../readArguments.ts';
import { CommandError, ended, type Verb } from '../verb.ts';

export const exportJournal: Verb = {
  usage: '--book FILE.outyard [--to JOURNAL.csv]',
  summary: 'Writes the whole journal as CSV, to a new file or to the standard output.',
  async run(args, speech) {
    const { options } = readArguments(args, ['book', 'to'], 0);
    const journal = await atBook(options.book, false, (desk) => desk.ask('export.journal', {}));
    if (options.to === undefined) {
      speech.print(journal.text);
      return ended.well;
    }
    try {
      writeFileSync(pathOf(options.to), journal.text, { flag: 'wx' });
    } catch (error) {
      const exists = error instanceof Error && 'code' in error && error.code === 'EEXIST';
      throw exists
        ? new CommandError(`${options.to} is there already and was left as it is.`, 'Name a new file.')
        : new CommandError(`${options.to} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
    }
    speech.complain(`${journal.rows} rows written to ${options.to}.`);
    return ended.well;
  },
};
