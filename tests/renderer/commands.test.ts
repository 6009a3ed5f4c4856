import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { CommandSetting, Offer } from '../../renderer/commands/command.ts';
import { backToToday, commands, findCommand } from '../../renderer/commands/commands.ts';
import { commandsFor } from '../../renderer/commands/findChoices.tsx';
import { isPressed, shortcutText, type Press, type Shortcut } from '../../renderer/commands/shortcut.ts';
import { dayKeys, sheetKeys, standKeys } from '../../renderer/commands/sheetKeys.ts';
import { moveForKey } from '../../renderer/screens/tonight/sheetMoves.ts';
import { dayForKey } from '../../renderer/screens/tonight/sheetDay.ts';
import { day } from '#shared/days.ts';

const offers: readonly Offer[] = ['enter the round', 'open the entry form', 'choose a file', 'export', 'check', 'print the review', 'print the order', 'print the field sheet', 'fold the margin'];
/** A setting in which everything can be done. */
const able: CommandSetting = {
  book: {
    path: '/b', name: 'b', position: 1, entries: 3, living: 1, yards: [], firstDay: null, lastDay: null, dateOrder: 'day-first', massUnit: 'kg', demo: false,
  },
  offered: new Set(offers),
  asOf: null,
};
const withKeys = commands.flatMap(({ id, shortcut }) => (shortcut ? [{ id, shortcut }] : []));

function press({ key, ctrl = false, alt = false, shift = false }: { key: string; ctrl?: boolean; alt?: boolean; shift?: boolean }): Press {
  const code = /^[a-z]$/i.test(key) ? `Key${key.toUpperCase()}` : /^\d$/.test(key) ? `Digit${key}` : key;
  return { key, code, ctrlKey: ctrl, metaKey: false, altKey: alt, shiftKey: shift };
}
const pressOf = (shortcut: Shortcut): Press => press(shortcut);

test('no shortcut means two things, and each press gives exactly its command', () => {
  expect(new Set(commands.map(({ id }) => id)).size).toBe(commands.length);
  expect(new Set(commands.map(({ name }) => name)).size).toBe(commands.length);
  expect(withKeys.length).toBeGreaterThan(8);
  for (const { id, shortcut } of withKeys) {
    expect(withKeys.filter((other) => isPressed(other.shortcut, pressOf(shortcut))).map((other) => other.id)).toEqual([id]);
  }
});

test('no shortcut is a key of the sheet, of the day field, or of writing', () => {
  const places = [...sheetKeys, ...dayKeys, ...standKeys].flatMap(({ keys }) => keys);
  for (const { id, shortcut } of withKeys) {
    expect(places.filter((key) => isPressed(shortcut, pressOf(key))), id).toEqual([]);
    // What the sheet really does with that press: nothing. It looks at no press with Alt.
    if (!shortcut.alt) {
      const caret = { start: 0, end: 1, length: 1 };
      const move = moveForKey({ key: shortcut.key, shift: shortcut.shift ?? false, ctrl: shortcut.ctrl ?? false }, caret);
      expect(move, id).toBeNull();
      expect(shortcut.ctrl || dayForKey(shortcut.key, day('2026-05-01'), day('2026-05-02')) === null, id).toBe(true);
    }
    const writing = ['a', 'c', 'v', 'x', 'z', 'y'].some((key) => isPressed(shortcut, press({ key, ctrl: true })) || isPressed(shortcut, press({ key, ctrl: true, shift: true })));
    expect(writing, id).toBe(false);
    // A letter without Ctrl or Alt is text.
    expect(shortcut.key.length === 1 && !shortcut.ctrl && !shortcut.alt, id).toBe(false);
  }
});

test('the keys of the sheet are what the sheet does', () => {
  const caret = { start: 0, end: 2, length: 2 };
  // Tab is the browser's own, Space a mark; these four are the sheet's beside moving.
  const beside = new Set(['Tab', 'Shift Tab', 'Ctrl D', 'Ctrl Shift D', 'Esc', 'Space']);
  for (const key of sheetKeys.flatMap(({ keys }) => keys)) {
    if (!beside.has(shortcutText(key))) expect(moveForKey({ key: key.key, shift: key.shift ?? false, ctrl: key.ctrl ?? false }, caret), shortcutText(key)).not.toBeNull();
  }
  for (const { key } of dayKeys.flatMap(({ keys }) => keys)) expect(dayForKey(key, day('2026-05-01'), day('2026-05-02'))).not.toBeNull();
});

test('no shortcut is one of the window’s own menu', () => {
  const menu = readFileSync(new URL('../../electron/main/menu.ts', import.meta.url), 'utf8');
  const taken = [...menu.matchAll(/accelerator: '([^']+)'/g)].map((match) => (match[1] ?? '').replace('CmdOrCtrl', 'Ctrl').replaceAll('+', ' ').toUpperCase());
  const letters = [...menu.matchAll(/label: '&(\w)/g)].map((match) => `ALT ${match[1]}`.toUpperCase());
  expect(taken).toContain('CTRL P');
  expect(letters).toContain('ALT F');
  for (const { id, shortcut } of withKeys) expect([...taken, ...letters], id).not.toContain(shortcutText(shortcut).toUpperCase());
});

test('every command is in the box by its name, once it can be given', () => {
  const looking: CommandSetting = { ...able, asOf: day('2026-05-01') };
  expect(commandsFor('', able)).toEqual(commands.filter((command) => command !== findCommand && command !== backToToday));
  for (const command of commands) {
    if (command !== findCommand) expect(commandsFor(command.name, command === backToToday ? looking : able)[0], command.name).toBe(command);
  }
  expect(commandsFor('csv', able).map(({ id }) => id)).toEqual(['book.import', 'book.export']);
});

test('while another day is looked at, the way back is offered and nothing that enters is', () => {
  const then = commandsFor('', { ...able, asOf: day('2026-05-01') }).map(({ id }) => id);
  expect(then).toContain('day.today');
  expect(commandsFor('', able).map(({ id }) => id).filter((id) => !then.includes(id))).toEqual(['stock.movement', 'stock.count', 'calendar.save', 'round.enter', 'entry.new', 'book.import']);
});

test('without a book only what needs none is offered', () => {
  const none: CommandSetting = { book: null, offered: new Set(), asOf: null };
  expect(commandsFor('', none).map(({ id }) => id)).toEqual(['demo.ossar', 'demo.tiny', 'paper.light', 'paper.dark', 'paper.system']);
});

test('every command does one thing, and every address it leads to is a page of the program', () => {
  const app = readFileSync(new URL('../../renderer/App.tsx', import.meta.url), 'utf8');
  const routes = [...app.matchAll(/path="([^"]+)"/g)].map((match) => (match[1] ?? '').replace(/\/:\w+\?$/, ''));
  expect(routes).toContain('/book/sort-out');
  const asked = new Set<string>();
  for (const command of commands) {
    const done: string[] = [];
    const goes = (address: string) => {
      expect(routes, command.id).toContain(address);
      return address;
    };
    command.run({
      go: (address) => done.push(`go ${goes(address)}`),
      onScreen: (offer, address) => done.push(`${offer} ${address === undefined ? '' : goes(address)}`),
      chooseDay: () => done.push('choose a day'),
      backToToday: () => done.push('today'),
      undo: () => done.push('undo'),
      redo: () => done.push('redo'),
      closeBook: () => done.push('close'),
      openDemo: (which) => done.push(`demo ${which}`),
      paper: (theme) => done.push(`paper ${theme}`),
      find: () => done.push('find'),
    });
    expect(done, command.id).toHaveLength(1);
    asked.add(done[0] ?? '');
  }
  // No two commands are one under two names, and the box that has them all opens by a key.
  expect(asked.size).toBe(commands.length);
  expect(findCommand.shortcut).toBeDefined();
  // A command that only an open screen offers has the key, or its own button there; any other can be given from anywhere.
  const elsewhere: CommandSetting = { ...able, offered: new Set() };
  for (const command of commands) if (!command.enabled(elsewhere)) expect(command.shortcut, command.id).toBeDefined();
});
