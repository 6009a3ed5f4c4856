import { atBook } from '../openDesk.ts';
import { oneOf, readArguments } from '../readArguments.ts';
import { ended, type Verb } from '../verb.ts';

export const check: Verb = {
  usage: '--book FILE.outyard [--format text|json]',
  summary: 'Checks the file, its links, and that the tables equal what the journal gives when it is read anew.',
  async run(args, speech) {
    const { options } = readArguments(args, ['book', 'format'], 0);
    const format = oneOf('format', options.format, ['text', 'json']);
    const found = await atBook(options.book, false, (desk) => desk.ask('book.check', {}));
    const words = [
      found.sound ? `Sound: ${found.entries} entries.` : `Not sound; ${found.entries} entries. The file was left as it is.`,
      ...found.findings.map((finding) => `  ${finding}`),
    ];
    speech.print(format === 'json' ? JSON.stringify(found, null, 2) : words.join('\n'));
    return found.sound ? ended.well : ended.withFindings;
  },
};
