import { basename } from 'node:path';
import { dayFromIso, type Day } from '#shared/days.ts';
import { readClock } from '#electron/keeper/clock.ts';
import { readBytes } from '../files.ts';
import { atBook } from '../openDesk.ts';
import { numberOf, oneOf, readArguments } from '../readArguments.ts';
import { asCommandError, CommandError, ended, type Verb } from '../verb.ts';

export const report: Verb = {
  usage: '--journal FILE.csv|--book FILE.outyard [--season 2025] [--target N] [--confidence 0.9] [--as-of DAY] [--format text|json|html]',
  summary: 'Prints the account, losses and order of a journal (read into a scratch book) or of a book, which is not changed.',
  async run(args, speech) {
    const { options } = readArguments(args, ['journal', 'book', 'season', 'target', 'confidence', 'as-of', 'format'], 0);
    const format = oneOf('format', options.format, ['text', 'json', 'html']);
    if (options.journal !== undefined && options.book !== undefined) throw new CommandError('A journal or a book, not both.', 'Leave one of --journal and --book out.');
    if (options.journal === undefined && options.book === undefined) throw new CommandError('Which journal?', 'Name it with --journal FILE.csv, or a book with --book FILE.outyard.');
    const season = numberOf('season', options.season, { min: 1900, max: 2200, whole: true });
    const target = numberOf('target', options.target, { min: 0, max: 100_000, whole: true });
    const confidence = numberOf('confidence', options.confidence, { min: 0.5, max: 0.999 });
    const asOf = dayOf(options['as-of']);
    const choices = {
      ...(season === undefined ? {} : { season }),
      ...(target === undefined ? {} : { target }),
      ...(confidence === undefined ? {} : { confidence }),
      ...(asOf === undefined ? {} : { asOf }),
    };
    if (options.journal === undefined) {
      const made = await atBook(options.book, false, (desk) => desk.ask('losses.report', { format, ...choices }));
      speech.print(made.text);
      return ended.well;
    }
    const bytes = readBytes(options.journal);
    const [{ reportFromJournal }, { reportAs }] = await Promise.all([import('#core/desk/report.ts'), import('#core/desk/reportWords.ts')]);
    const answer = await reportFromJournal({ bytes, fileName: basename(options.journal), today: readClock().day, ...choices });
    if (!answer.ok) throw asCommandError(answer);
    speech.print(reportAs(format, answer.value, basename(options.journal)));
    return (answer.value.report.import?.toSortOut.length ?? 0) === 0 ? ended.well : ended.withFindings;
  },
};

function dayOf(given: string | undefined): Day | undefined {
  if (given === undefined) return undefined;
  const found = dayFromIso(given);
  if (found === null) throw new CommandError(`--as-of cannot be “${given}”.`, 'It is a day written like 2026-03-31.');
  return found;
}
