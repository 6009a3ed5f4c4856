import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders, periodDays } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { familyLanes, partOfLanes, shownLanes } from '#core/lineage/familyLanes.ts';
import { firstView, lanesFrom, linesPicture, wholeLines } from '#core/lineage/linesPicture.ts';
import { hived, lost, recorded, yards } from '../losses/recorded.ts';

const today = day('2026-11-25');

function bookOf(states: readonly ColonyState[]) {
  const byId = new Map(states.map((state) => [state.id, state]));
  const names: Names = {
    colony: (id) => byId.get(id)?.label ?? '',
    yard: (id) => yards.find((yard) => yard.id === id) ?? (() => { throw new Error(`no yard ${id}`); })(),
    massUnit: 'lb',
  };
  return { states, byId, names, yardList: yards, borders: defaultBorders };
}

const rows: Cells[] = [
  hived('2023-05-01', 'A', 'QY', { queen_year: '2023', queen_source: 'Tarn' }),
  hived('2023-05-02', 'Z'),
  { date: '2024-05-20', entry: 'split', colony: 'A', new_colony: 'B', to_yard: 'LB', queen: 'stays' },
  { date: '2024-06-20', entry: 'split', colony: 'B', new_colony: 'C', queen: 'stays' },
  { date: '2025-05-20', entry: 'split', colony: 'A', new_colony: 'D', queen: 'moves' },
  { date: '2025-06-01', entry: 'move', colony: 'C', to_yard: 'OO' },
  { date: '2025-06-10', entry: 'requeen', colony: 'C', queen_year: '2025', queen_source: 'Bramble' },
  { date: '2025-09-01', entry: 'combine', colony: 'D', into: 'Z' },
  lost('2025-12-01', 'B'),
];

/** A record of any installs, splits, combines, moves and losses that do not contradict each other. */
const records = fc.array(fc.record({ act: fc.constantFrom('hive', 'split', 'split', 'split', 'combine', 'move', 'lose'), one: fc.nat(), other: fc.nat(), days: fc.nat(40) }), { maxLength: 40 }).map((acts) => {
  const cells: Cells[] = [hived('2021-05-01', 'H0')];
  const living = ['H0'];
  let on = day('2021-05-01');
  for (const [at, { act, one, other, days }] of acts.entries()) {
    on = addDays(on, 1 + days);
    const colony = living[one % living.length];
    const second = living[other % living.length];
    if (act === 'hive' || colony === undefined || second === undefined) {
      cells.push(hived(on, `H${at + 1}`));
      living.push(`H${at + 1}`);
    } else if (act === 'split') {
      cells.push({ date: on, entry: 'split', colony, new_colony: `S${at + 1}`, queen: other % 2 === 0 ? 'stays' : 'moves' });
      living.push(`S${at + 1}`);
    } else if (act === 'move') {
      cells.push({ date: on, entry: 'move', colony, to_yard: ['QY', 'LB', 'OO'][other % 3] ?? 'QY' });
    } else if (act === 'combine' && colony !== second) {
      cells.push({ date: on, entry: 'combine', colony, into: second });
      living.splice(living.indexOf(colony), 1);
    } else if (act === 'lose') {
      cells.push(lost(on, colony));
      living.splice(living.indexOf(colony), 1);
    }
  }
  // A move to the yard where it stands is refused; whether it is depends on all that came before.
  const entered: Cells[] = [];
  const at = new Map<string, string>();
  for (const row of cells) {
    const { entry, colony = '', new_colony: daughter = '' } = row;
    if (entry === 'install') at.set(colony, row.yard ?? 'QY');
    if (entry === 'split') at.set(daughter, at.get(colony) ?? 'QY');
    if (entry === 'move') {
      if (at.get(colony) === row.to_yard) continue;
      at.set(colony, row.to_yard ?? 'QY');
    }
    entered.push(row);
  }
  return recorded(entered).states;
});

test('a family is together, a colony above its daughters, the youngest daughter first', () => {
  const book = bookOf(recorded(rows).states);
  const { lanes, links } = familyLanes(book.states, book.names, today);
  const label = (id: number) => lanes.find((lane) => lane.id === id)?.label;
  expect(lanes.map(({ label: own, depth, how }) => `${own} ${depth} ${how}`)).toEqual(['A 0 alive', 'D 1 combined', 'B 1 lost', 'C 2 alive', 'Z 0 alive']);
  expect(links.map(({ kind, from, to, day: on }) => `${kind} ${label(from)}-${label(to)} ${on}`)).toEqual([
    'split A-D 2025-05-20', 'combine D-Z 2025-09-01', 'split A-B 2024-05-20', 'split B-C 2024-06-20',
  ]);
  const [, , , c] = lanes;
  expect(c?.moves).toEqual([{ day: '2025-06-01', to: 'OO', toName: 'OO yard' }]);
  expect(c?.queens.at(-1)).toMatchObject({ day: '2025-06-10', queen: { year: 2025, colour: 'blue', source: 'Bramble' } });
});

test('for any record: one lane each, mothers above daughters, families unbroken, links between lanes that are there, the same every time', () => {
  fc.assert(
    fc.property(records, (states) => {
      const book = bookOf(states);
      const { lanes, links } = familyLanes(states, book.names, today);
      expect(lanes.map(({ id }) => id).toSorted((a, b) => a - b)).toEqual(states.map(({ id }) => id));
      const place = new Map(lanes.map(({ id }, at) => [id, at]));
      for (const [at, lane] of lanes.entries()) {
        const mother = lane.mother === null ? undefined : lanes[place.get(lane.mother) ?? -1];
        expect(lane.family).toBe(mother?.family ?? lane.id);
        expect(lane.depth).toBe(mother === undefined ? 0 : mother.depth + 1);
        // Its own line runs from it without a gap, so the lane before is its mother, a sister's line, or the family before.
        const before = lanes[at - 1];
        expect(before === undefined || before.family === lane.family || lane.depth === 0).toBe(true);
      }
      for (const { kind, from, to, day: on } of links) {
        const [first, second] = [lanes[place.get(from) ?? -1], lanes[place.get(to) ?? -1]];
        if (first === undefined || second === undefined) throw new Error('a link leads to a lane that is not there');
        if (kind === 'split') expect([place.get(from) ?? 0, second.start]).toEqual([Math.min(place.get(from) ?? 0, place.get(to) ?? 0), on]);
        else expect(first.until).toBe(on);
        expect(first.start <= on && on <= first.until).toBe(true);
        expect(second.start <= on && on <= second.until).toBe(true);
      }
      expect(links).toHaveLength(states.filter(({ mother }) => mother !== null).length + states.filter(({ into }) => into !== null).length);
      expect(familyLanes(states.toReversed(), book.names, today)).toEqual({ lanes, links });
    }),
    { numRuns: 60 },
  );
});

test('parts of the lanes, one after another, are the whole: every lane once, in order, and every link with the later of its ends', () => {
  fc.assert(
    fc.property(records, fc.integer({ min: 1, max: 12 }), (states, most) => {
      const book = bookOf(states);
      const whole = wholeLines(book, today);
      const { lanes, links } = linesPicture(book, {}, today, whole);
      const parts = Array.from({ length: Math.ceil(lanes.length / most) }, (_, at) => lanesFrom(book, {}, at * most, most, whole));
      expect(parts.flatMap((part) => part.lanes)).toEqual(lanes);
      const key = ({ kind, from, to }: (typeof links)[number]) => `${kind} ${from} ${to}`;
      expect(parts.flatMap((part) => part.links.map(key)).toSorted()).toEqual(links.map(key).toSorted());
      const seen = new Set<number>();
      for (const part of parts) {
        for (const { id } of part.lanes) seen.add(id);
        // No link leads to a lane that is yet to come.
        for (const { from, to } of part.links) expect([seen.has(from), seen.has(to)]).toEqual([true, true]);
        expect(new Set(part.families.map(({ id }) => id))).toEqual(new Set(part.lanes.map(({ family }) => family)));
      }
      expect(lanesFrom(book, {}, lanes.length, most, whole)).toEqual({ lanes: [], links: [], families: [] });
      expect(partOfLanes({ lanes, links }, 0, lanes.length)).toEqual({ lanes, links });
    }),
    { numRuns: 60 },
  );
});

test('the first view of a small book is the whole picture; of a large one it says how much there is', () => {
  const small = linesPicture(bookOf(recorded(rows).states), {}, today);
  expect(firstView(small, {})).toEqual(small);
  const book = bookOf(recorded(Array.from({ length: 450 }, (_, at) => hived('2024-05-01', `H${at}`))).states);
  const picture = linesPicture(book, {}, today);
  const first = firstView(picture, {});
  expect([first.lanes.length, first.laneCount, first.families.length, first.lines.family.length, first.rowCounts.family]).toEqual([400, 450, 400, 200, 450]);
  expect([first.sentence, first.lines.all]).toEqual([picture.sentence, picture.lines.all]);
  // A line that was chosen keeps its name, however small it is.
  const last = picture.families.at(-1)?.id;
  expect(firstView(linesPicture(book, { family: last }, today), { family: last }).families.at(-1)?.id).toBe(last);
});

test('the line to a daughter passes no lane that was there on that day, so no line runs through a life', () => {
  fc.assert(
    fc.property(records, (states) => {
      const { lanes, links } = familyLanes(states, bookOf(states).names, today);
      const place = new Map(lanes.map(({ id }, at) => [id, at]));
      for (const { from, to, day: on } of links.filter(({ kind }) => kind === 'split')) {
        for (const passed of lanes.slice((place.get(from) ?? 0) + 1, place.get(to))) expect(passed.start >= on).toBe(true);
      }
    }),
    { numRuns: 60 },
  );
});

test('by line, yard and season only what fits is left, with the links that still have both ends', () => {
  const book = bookOf(recorded(rows).states);
  const all = familyLanes(book.states, book.names, today);
  const labels = (filter: Parameters<typeof shownLanes>[2]) => shownLanes(all, book.byId, filter).lanes.map(({ label }) => label);
  const [a] = book.states;
  const oo = yards.find(({ code }) => code === 'OO');
  const lb = yards.find(({ code }) => code === 'LB');
  expect(labels({ family: a?.id })).toEqual(['A', 'D', 'B', 'C']);
  expect(labels({ yard: oo?.id })).toEqual(['C']);
  expect(labels({ yard: lb?.id })).toEqual(['B', 'C']);
  expect(labels({ days: periodDays(2023, 'year') })).toEqual(['A', 'Z']);
  expect(labels({ yard: lb?.id, days: periodDays(2026, 'year') })).toEqual([]);
  fc.assert(
    fc.property(records, fc.constantFrom(...yards), fc.integer({ min: 2020, max: 2027 }), (states, yard, season) => {
      const whole = familyLanes(states, bookOf(states).names, today);
      const shown = shownLanes(whole, new Map(states.map((state) => [state.id, state])), { yard: yard.id, days: periodDays(season, 'year') });
      const here = new Set(shown.lanes.map(({ id }) => id));
      expect(whole.lanes.filter(({ id }) => here.has(id))).toEqual(shown.lanes);
      expect(whole.links.filter(({ from, to }) => here.has(from) && here.has(to))).toEqual(shown.links);
    }),
    { numRuns: 40 },
  );
});

test('a line’s record counts every colony once a winter that is over; what left alive meanwhile is left out', () => {
  const more: Cells[] = [...rows, { date: '2026-01-10', entry: 'sale', colony: 'C' }];
  const picture = linesPicture(bookOf(recorded(more).states), {}, today);
  // A: the winters from 2023, 2024 and 2025; B: 2024 and 2025, in which it was lost; C: 2024, and sold in that of 2025; D: united before one; Z: three.
  expect(picture.lines.family.map(({ name, colonies, alive, wintered, lost: gone }) => [name, colonies, alive, wintered, gone])).toEqual([
    ['A, package 2023', 4, 1, 6, 1],
    ['Z, package 2023', 1, 1, 3, 0],
  ]);
  expect(picture.lines.all).toMatchObject({ colonies: 5, alive: 2, wintered: 9, lost: 1 });
  expect(picture.lines.bees.map(({ name, colonies }) => [name, colonies])).toEqual([['own split', 3], ['package', 2]]);
  expect(picture.lines.queen.find(({ name }) => name === 'Bramble')).toMatchObject({ colonies: 1, alive: 0, wintered: 0, rate: null, says: 'No winter that is over was gone into.' });
});

test('small numbers are said to be small, with the interval that fits', () => {
  const hives = ['1', '2', '3', '4', '5'].map((name) => hived('2024-05-01', `K-${name}`, 'QY', { supplier: 'Sandel Road Bees' }));
  const { lines } = linesPicture(bookOf(recorded([...hives, lost('2024-12-01', 'K-1'), lost('2025-01-05', 'K-2')]).states), {}, day('2025-05-01'));
  // Wilson, 2 of 5: 0.118 to 0.769 (Newcombe 1998, method 3).
  expect(lines.bees).toMatchObject([{ name: 'package from Sandel Road Bees', wintered: 5, lost: 2, says: 'So few that anything from 12 to 77 in 100 fits.' }]);
  // The same on the winter's last evening, and nothing the evening before.
  const states = recorded([...hives, lost('2024-12-01', 'K-1'), lost('2025-01-05', 'K-2')]).states;
  expect(linesPicture(bookOf(states), {}, day('2025-03-31')).lines.all).toMatchObject({ wintered: 5, lost: 2 });
  expect(linesPicture(bookOf(states), {}, day('2025-03-30')).lines.all).toMatchObject({ wintered: 0, lost: 0 });
  expect(lines.bees[0]?.wilson?.map((limit) => Math.round(limit * 1000))).toEqual([118, 769]);
});

test('the groups add up to the whole, for any record', () => {
  fc.assert(
    fc.property(records, (states) => {
      const { lines, families } = linesPicture(bookOf(states), {}, today);
      for (const rowsOf of [lines.family, lines.bees]) {
        for (const key of ['colonies', 'alive', 'wintered', 'lost'] as const) expect(rowsOf.reduce((sum, row) => sum + row[key], 0)).toBe(lines.all[key]);
      }
      expect(families.reduce((sum, { alive }) => sum + alive, 0)).toBe(lines.all.alive);
    }),
    { numRuns: 40 },
  );
});

test('an empty book has no lanes and no winters, and a line that is not in it none either', () => {
  const empty = linesPicture(bookOf([]), {}, today);
  expect(empty).toMatchObject({ lanes: [], links: [], seasons: [], families: [], lines: { family: [], all: { colonies: 0, rate: null } } });
  expect(linesPicture(bookOf(recorded(rows).states), { family: 99 as never }, today)).toMatchObject({ lanes: [], sentence: 'No colony fits.' });
});
