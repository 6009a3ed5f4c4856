import { basename } from 'node:path';
import type { ImportReport } from '#shared/contract/book.ts';
import { readBytes } from '../files.ts';
import { atBook } from '../openDesk.ts';
import { oneOf, readArguments } from '../readArguments.ts';
import { CommandError, ended, type Verb } from '../verb.ts';

export const importJournal: Verb = {
  usage: 'JOURNAL.csv --book FILE.outyard [--format text|json]',
  summary: 'Reads a journal into a book (made if it is not there). Rows to sort out are listed, all others entered at once.',
  async run(args, speech) {
    const { options, files } = readArguments(args, ['book', 'format'], 1);
    const format = oneOf('format', options.format, ['text', 'json']);
    const [given] = files;
    if (given === undefined) throw new CommandError('Which journal?', 'Name the CSV file after “import”.');
    const file = { name: basename(given), base64: Buffer.from(readBytes(given)).toString('base64') };
    const done = await atBook(options.book, true, async (desk) => {
      const preview = await desk.ask('import.preview', { file });
      return preview.entered === 0
        ? preview
        : desk.ask('import.enter', { file, sha256: preview.sha256, position: preview.position });
    });
    speech.print(format === 'json' ? JSON.stringify(done, null, 2) : inWords(done));
    return done.toSortOut.length === 0 ? ended.well : ended.withFindings;
  },
};

function inWords(done: ImportReport): string {
  const lines = [
    `${done.file}: ${done.read} rows read, ${done.entered} entered, ${done.repeats} repeats, ${done.toSortOut.length} to sort out.`,
    `Colonies alive after the last entry: ${done.living}.`,
  ];
  for (const { line, column, value, sentence } of done.toSortOut) {
    lines.push(`  line ${line}${column === null ? '' : `, ${column}`}${value === '' ? '' : ` “${value}”`}: ${sentence}`);
  }
  for (const { sentence, rows } of done.newItems) lines.push(`  ${sentence} Entered as it is written, in ${rows === 1 ? 'one row' : `${rows} rows`}; mend it in the file or in the book if it is misspelt.`);
  for (const { line, sentence } of done.strange.figures.slice(0, 20)) lines.push(`  line ${line}, out of the ordinary: ${sentence}`);
  return lines.join('\n');
}
