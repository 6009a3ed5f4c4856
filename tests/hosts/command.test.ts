import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, describe, expect, test } from 'vitest';
import { root } from '#build/making/makeParts.ts';
import type { Cells } from '#shared/entryForms.ts';
import { csv } from './deskSuite.ts';
import { trialFolder } from './trialFolder.ts';

const script = join(root, 'electron', 'command', 'main.ts');
const trial = trialFolder();
afterAll(trial.remove);
const environment = { ...process.env, OUTYARD_FOLDER: trial.folder };
const at = (name: string) => join(trial.folder, name);

function outyard(...args: string[]): { code: number | null; out: string; said: string } {
  const run = spawnSync(process.execPath, [script, ...args], { encoding: 'utf8', env: environment, cwd: trial.folder, timeout: 50_000, maxBuffer: 1e9 });
  return { code: run.status, out: run.stdout, said: run.stderr };
}

const good: Cells[] = [
  { date: '2024-04-20', entry: 'install', yard: 'QY', colony: 'Q1', origin: 'package' },
  { date: '2024-05-15', entry: 'install', yard: 'LB', colony: 'L1', origin: 'nuc', note: 'four frames, "strong"' },
];
writeFileSync(at('good.csv'), csv(good));
writeFileSync(at('faulty.csv'), csv([...good, { date: '2024-06-01', entry: 'inspection', yard: 'QY', colony: 'Q7' }]));

describe('the command line', () => {
  test('explains itself', () => {
    const help = outyard('help');
    expect(help.code).toBe(0);
    for (const verb of ['import', 'export', 'report', 'check', 'rules', 'calendar', 'demo']) expect(help.out).toMatch(new RegExp(`^  ${verb} `, 'm'));
    expect(outyard().out).toBe(help.out);
    expect(outyard('import', '--help').out).toContain('--book');
  });

  test.each([
    [['improt'], 'There is no “improt” here.'],
    [['import', 'good.csv'], 'Which book?'],
    [['import', '--book', 'x.outyard'], 'Which journal?'],
    [['import', 'good.csv', 'more.csv', '--book', 'x.outyard'], 'one word too many'],
    [['import', 'good.csv', '--book', 'x.outyard', '--format', 'xml'], 'text, json'],
    [['import', 'good.csv', '--book', 'x.outyard', '--fomat', 'json'], '--fomat'],
    [['import', 'absent.csv', '--book', 'x.outyard'], 'There is no file absent.csv.'],
    [['import', '.', '--book', 'x.outyard'], 'is a folder'],
    [['import', 'good.csv', '--book', 'x.book'], '.outyard'],
    [['export', '--book', 'absent.outyard'], 'absent.outyard'],
    [['check', '--book', 'good.csv'], 'good.csv'],
    [['calendar', '--book', 'absent.outyard'], 'absent.outyard'],
    [['report'], 'Which journal?'],
    [['report', '--journal', 'absent.csv'], 'There is no file absent.csv.'],
    [['report', '--journal', 'good.csv', '--season', '20x5'], 'whole number'],
    [['report', '--journal', 'good.csv', '--confidence', '90'], '0.5 to 0.999'],
    [['report', '--journal', 'good.csv', '--as-of', '2025-02-30'], '--as-of'],
    [['report', '--journal', 'good.csv', '--book', 'x.outyard'], 'not both'],
    [['report', '--book', 'absent.outyard'], 'absent.outyard'],
    [['rules', '--book', 'absent.outyard'], 'absent.outyard'],
    [['rules', '--format', 'xml'], 'text, json'],
    [['demo', '--which', 'other'], 'ossar, tiny'],
  ])('%j: code 2 and a sentence, and no file is made', (args, sentence) => {
    const before = readdirSync(trial.folder);
    const run = outyard(...args);
    expect([run.code, run.out]).toEqual([2, '']);
    expect(run.said).toContain(sentence);
    expect(run.said).not.toMatch(/\n {4}at /);
    expect(readdirSync(trial.folder).filter((name) => name !== 'program')).toEqual(before.filter((name) => name !== 'program'));
  });

  const latin = Buffer.concat([Buffer.from('date,entry,note\n2024-05-01,note,'), Buffer.from([0x66, 0xfc, 0x72]), Buffer.from('\n')]);
  test.each([
    ['empty.csv', Buffer.from('')],
    ['junk.csv', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3, 255, 254])],
    ['headless.csv', Buffer.from('2024-04-20,install,QY\n')],
    ['latin.csv', latin],
  ])('%s cannot be read: code 2, a sentence, and no empty book is left behind', (name, bytes) => {
    writeFileSync(at(name), bytes);
    for (const args of [['import', name, '--book', 'left.outyard'], ['report', '--journal', name]]) {
      const run = outyard(...args);
      expect([run.code, run.out]).toEqual([2, '']);
      expect(run.said).toMatch(/[.…]\n$/);
    }
    expect(existsSync(at('left.outyard'))).toBe(false);
  });

  test('imports into a new book, and a second time enters nothing', () => {
    const first = outyard('import', 'good.csv', '--book', 'two.outyard', '--format', 'json');
    expect(first.code).toBe(0);
    expect(JSON.parse(first.out)).toMatchObject({ read: 2, entered: 2, repeats: 0, toSortOut: [], living: 2 });
    expect(JSON.parse(outyard('import', 'good.csv', '--book', 'two.outyard', '--format', 'json').out)).toMatchObject({ read: 2, entered: 0, repeats: 2, living: 2 });
  });

  test('rows to sort out are listed, the others entered, and the code is 1', () => {
    const run = outyard('import', 'faulty.csv', '--book', 'faulty.outyard');
    expect(run.code).toBe(1);
    expect(run.out).toContain('3 rows read, 2 entered, 0 repeats, 1 to sort out.');
    expect(run.out).toContain('line 4');
    expect(run.out).toContain('Q7');
  });

  test('exports what was imported, and leaves a file that is there as it is', () => {
    const whole = outyard('export', '--book', 'two.outyard');
    expect(whole.code).toBe(0);
    expect(outyard('export', '--book', 'two.outyard', '--to', 'written.csv').code).toBe(0);
    expect(readFileSync(at('written.csv'), 'utf8')).toBe(whole.out);
    const again = outyard('export', '--book', 'two.outyard', '--to', 'good.csv');
    expect([again.code, readFileSync(at('good.csv'), 'utf8')]).toEqual([2, csv(good)]);
    mkdirSync(at('elsewhere'), { recursive: true });
    expect(outyard('import', 'written.csv', '--book', join('elsewhere', 'again.outyard')).code).toBe(0);
    expect(outyard('export', '--book', join('elsewhere', 'again.outyard')).out).toBe(whole.out);
  });

  test('reports on a journal, in three forms', () => {
    const run = outyard('report', '--journal', 'good.csv', '--season', '2024', '--target', '6', '--as-of', '2025-03-31', '--format', 'json');
    expect(run.code).toBe(0);
    const found = JSON.parse(run.out) as Record<string, unknown>;
    expect(Object.keys(found)).toEqual(expect.arrayContaining(['import', 'ledger', 'losses', 'survival', 'colonies', 'order']));
    expect(found).toMatchObject({ import: { read: 2, entered: 2, repeats: 0, toSortOut: [] }, living: 2 });
    expect(found['order']).toMatchObject({ target: 6 });
    expect(found['colonies']).toEqual([
      expect.objectContaining({ label: 'Q1', start: '2024-04-20', end: null, how: 'alive', origin: 'package', yard: 'QY' }),
      expect.objectContaining({ label: 'L1', start: '2024-05-15', end: null, how: 'alive', origin: 'nuc', yard: 'LB' }),
    ]);
    expect(outyard('report', '--journal', 'good.csv').out).toContain('2 rows read: 2 entered');
    const page = outyard('report', '--journal', 'good.csv', '--format', 'html');
    expect(page.code).toBe(0);
    expect(page.out).toMatch(/^<!doctype html>[\s\S]*<\/html>\n$/i);
    expect(page.out).not.toMatch(/<script|https?:/i);
  });

  test('reports on a book as on its journal, and leaves the book as it is', () => {
    expect(outyard('import', 'good.csv', '--book', 'told.outyard').code).toBe(0);
    const before = readFileSync(at('told.outyard'));
    const page = outyard('report', '--book', 'told.outyard', '--format', 'html', '--as-of', '2025-03-31');
    expect(page.code).toBe(0);
    expect(page.out).toMatch(/^<!doctype html>[\s\S]*<svg[\s\S]*What went with it[\s\S]*<\/html>\n$/i);
    expect(page.out).not.toMatch(/<script|https?:|<link|<img/i);
    const [told, read] = [outyard('report', '--book', 'told.outyard', '--format', 'json', '--as-of', '2025-03-31'), outyard('report', '--journal', 'good.csv', '--format', 'json', '--as-of', '2025-03-31')];
    const { import: none, ...figures } = JSON.parse(told.out) as Record<string, unknown>;
    expect(none).toBeNull();
    expect(JSON.parse(read.out)).toMatchObject(figures);
    expect(readFileSync(at('told.outyard')).equals(before)).toBe(true);
    expect(outyard('report', '--book', 'told.outyard', '--season', '1999').said).toContain('no records of the season 1999');
  });

  test('a report on a journal with rows to sort out is whole, and the code is 1', () => {
    const run = outyard('report', '--journal', 'faulty.csv', '--format', 'json');
    expect(run.code).toBe(1);
    expect(JSON.parse(run.out)).toMatchObject({ import: { read: 3, entered: 2, toSortOut: [{ line: 4, column: 'colony', value: 'Q7' }] } });
  });

  test('checks a book', () => {
    const run = outyard('check', '--book', 'two.outyard', '--format', 'json');
    expect(run.code).toBe(0);
    expect(JSON.parse(run.out)).toMatchObject({ sound: true, refoldEqual: true, entries: 2 });
    expect(outyard('check', '--book', 'two.outyard').out).toBe('Sound: 2 entries.\n');
  });

  test('lists every house rule with default, range, source and source word, and counts them', () => {
    const run = outyard('rules');
    expect(run.code).toBe(0);
    const last = run.out.trimEnd().split('\n').at(-1) ?? '';
    expect(last).toMatch(/^\d+ rules, \d+ from memory, 0 without a source word$/);
    expect(run.out.match(/^ {2}[a-z]+\.\S+: /gm)?.length).toBe(Number(last.split(' ')[0]));
    expect(run.out).toContain('default 28.8 %, 5 to 80 %\n      [read] 13-year average winter loss');
    expect(run.out).toMatch(/\[check the label\]/);
    const found = JSON.parse(outyard('rules', '--format', 'json', '--book', 'two.outyard').out) as { rules: number; without: number; rooms: { rules: unknown[] }[] };
    expect(found).toMatchObject({ rules: Number(last.split(' ')[0]), without: 0 });
    expect(found.rooms.flatMap(({ rules }) => rules)).toHaveLength(found.rules);
  });

  test('writes the small demo and says where', () => {
    const run = outyard('demo', '--which', 'tiny', '--folder', 'demo');
    expect(run.code).toBe(0);
    const path = run.out.trim();
    expect(path.startsWith(at('demo'))).toBe(true);
    expect(outyard('check', '--book', path).code).toBe(0);
  });

  test('writes the calendar, over its own file and over no other', () => {
    outyard('import', 'good.csv', '--book', 'dated.outyard');
    writeFileSync(at('other.ics'), 'BEGIN:VCALENDAR');
    expect(outyard('calendar', '--book', 'dated.outyard', '--out', 'other.ics').said).toContain('left as it is');
    expect(readFileSync(at('other.ics'), 'utf8')).toBe('BEGIN:VCALENDAR');
    const first = outyard('calendar', '--book', 'dated.outyard', '--out', 'bees.ics');
    expect(first).toMatchObject({ code: 0, out: '' });
    expect(readFileSync(at('bees.ics'), 'utf8')).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\nPRODID:-\/\/Outyard\/\/[^]*END:VCALENDAR\r\n$/);
    expect(outyard('calendar', '--book', 'dated.outyard', '--out', 'bees.ics').code).toBe(0);
    expect(outyard('calendar', '--book', 'dated.outyard').out).toBe(readFileSync(at('bees.ics'), 'utf8'));
  });

  test('a long result reaches a slow reader whole', async () => {
    const notes = Array.from({ length: 4000 }, (_, one) => ({ date: '2024-05-01', entry: 'note', note: `${one} ${'word '.repeat(60)}` }));
    writeFileSync(at('long.csv'), csv(notes));
    expect(outyard('import', 'long.csv', '--book', 'long.outyard').code).toBe(0);
    const run = spawn(process.execPath, [script, 'export', '--book', at('long.outyard')], { env: environment, stdio: ['ignore', 'pipe', 'inherit'] });
    const ended = once(run, 'exit') as Promise<[number | null]>;
    // Long past the moment when it has said all it has to say; the pipe holds 64 kB of it.
    await wait(1500);
    let text = '';
    run.stdout.setEncoding('utf8');
    for await (const part of run.stdout) text += part as string;
    expect((await ended)[0]).toBe(0);
    expect(text.length).toBeGreaterThan(1_000_000);
    expect(text.trimEnd().split('\n')).toHaveLength(4001);
  });

  test('a reader that has had enough is no error', async () => {
    const run = spawn(process.execPath, [script, 'export', '--book', at('long.outyard')], { env: environment, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    run.stderr.on('data', (data: Buffer) => (said += data.toString()));
    await once(run.stdout, 'data');
    run.stdout.destroy();
    expect(((await once(run, 'exit')) as [number | null])[0]).toBe(0);
    expect(said).toBe('');
  });
});
