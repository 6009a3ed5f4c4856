import { pathOf } from '../files.ts';
import { atDesk } from '../openDesk.ts';
import { oneOf, readArguments } from '../readArguments.ts';
import { ended, type Verb } from '../verb.ts';

export const demo: Verb = {
  usage: '[--which ossar|tiny] [--folder FOLDER]',
  summary: 'Writes the book of an invented operation and prints where it lies.',
  async run(args, speech) {
    const { options } = readArguments(args, ['which', 'folder'], 0);
    const which = oneOf('which', options.which, ['ossar', 'tiny']);
    const status = await atDesk(options.folder === undefined ? null : pathOf(options.folder), (desk) => desk.ask('book.demo', { which }));
    if (status.book !== null) speech.print(status.book.path);
    return ended.well;
  },
};
