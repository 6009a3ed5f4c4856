import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { pathOf } from '../files.ts';
import { atBook } from '../openDesk.ts';
import { readArguments } from '../readArguments.ts';
import { CommandError, ended, type Verb } from '../verb.ts';

export const calendar: Verb = {
  usage: '--book FILE.outyard [--out CALENDAR.ics]',
  summary: 'Writes the planned visits, what is due, order deadlines and deliveries as a calendar file; the next one updates and cancels.',
  async run(args, speech) {
    const { options } = readArguments(args, ['book', 'out'], 0);
    const { out } = options;
    const path = out === undefined ? null : pathOf(out);
    // Said before the calendar is told anything.
    if (path !== null && existsSync(path) && !readFileSync(path, 'utf8').includes('PRODID:-//Outyard//')) throw new CommandError(`${out} is there already and was not written by Outyard, so it was left as it is.`, 'Name another file.');
    const { text, events, cancelled } = await atBook(options.book, false, (desk) => desk.ask('calendar.export', {}));
    if (path === null) {
      speech.print(text);
      return ended.well;
    }
    const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
    try {
      writeFileSync(beside, text);
      renameSync(beside, path);
    } catch (error) {
      rmSync(beside, { force: true });
      throw new CommandError(`${out} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
    }
    speech.complain(`${events} events written to ${out}${cancelled === 0 ? '' : `, ${cancelled} cancelled`}.`);
    return ended.well;
  },
};
