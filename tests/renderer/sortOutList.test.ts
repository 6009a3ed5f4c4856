import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { listAsCsv } from '../../renderer/screens/book/SortOutList.tsx';

test('the list to sort out can be saved; quotes and commas survive, and no value runs as a formula', () => {
  const text = listAsCsv([
    { line: 12, column: 'mites', value: '-4', sentence: 'Below zero.' },
    { line: 15, column: null, value: '=HYPERLINK("x")', sentence: 'Say "yes", or no.' },
    { line: 16, column: 'note', value: 'two\r\nlines', sentence: 'Too long.' },
  ]);
  expect(parse(text)).toEqual([
    ['line', 'column', 'value', 'sentence'],
    ['12', 'mites', "'-4", 'Below zero.'],
    ['15', '', `'=HYPERLINK("x")`, 'Say "yes", or no.'],
    ['16', 'note', 'two\r\nlines', 'Too long.'],
  ]);
});
