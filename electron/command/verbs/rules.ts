import { hasSourceWord, ruleBook, sourceCounts } from '#core/rules/ruleBook.ts';
import { rangeWords, ruleWords } from '#core/rules/ruleWords.ts';
import type { RuleBook, RuleLine } from '#shared/contract/rules.ts';
import { atBook } from '../openDesk.ts';
import { oneOf, readArguments } from '../readArguments.ts';
import { ended, type Verb } from '../verb.ts';

export const rules: Verb = {
  usage: '[--book FILE.outyard] [--format text|json]',
  summary: 'Lists every house rule with its default, range, source and source word; with a book, what was changed in it.',
  async run(args, speech) {
    const { options } = readArguments(args, ['book', 'format'], 0);
    const format = oneOf('format', options.format, ['text', 'json']);
    const book = options.book === undefined ? ruleBook(new Map()) : await atBook(options.book, false, (desk) => desk.ask('rules.book', {}));
    const lines = book.rooms.flatMap((room) => room.rules);
    const counts = sourceCounts(lines);
    speech.print(format === 'json' ? JSON.stringify({ ...counts, rooms: book.rooms }, null, 2) : textOf(book));
    return counts.without === 0 ? ended.well : ended.withFindings;
  },
};

function textOf({ rooms }: RuleBook): string {
  const counts = sourceCounts(rooms.flatMap((room) => room.rules));
  return [
    ...rooms.flatMap(({ heading, rules: own }) => [heading, ...own.flatMap(linesOf), '']),
    `${counts.rules} rules, ${counts.fromMemory} from memory, ${counts.without} without a source word`,
  ].join('\n');
}

function linesOf(rule: RuleLine): string[] {
  const now = rule.changed ? `; in this book ${ruleWords(rule, rule.value)}` : '';
  const word = hasSourceWord(rule) ? rule.confidence : 'NO SOURCE WORD';
  return [
    `  ${rule.key}: ${rule.label}`,
    `      default ${ruleWords(rule, rule.default)}, ${rangeWords(rule)}${now}`,
    `      [${word}]${rule.treatment ? ' [check the label]' : ''} ${rule.source}`,
  ];
}
