import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columns, entryForms, fields, kinds, type Cells, type Kind } from '#shared/entryForms.ts';
import { rulesOf } from '#core/journal/kinds.ts';
import { memoryStore } from '#core/book/memoryStore.ts';
import { acts, exported, imported, previewed, standingEntries, statesWithoutIds } from '#tests/journal/trialBook.ts';
import { fileText, row, rows } from './fileText.ts';

/** Two colonies, from which every kind of row can follow. */
const opened = rows(
  '2025-04-01 install | yard=OO | colony=G1 | origin=package | supplier=Sandel Road Bees | price=159',
  '2025-04-01 install | yard=LB | colony=G2 | origin=opening',
  '2025-04-02 supers on | colony=G1 | box=deep | count=3',
  '2025-04-02 supers on | colony=G1 | box=medium | count=3',
  '2025-04-02 supers on | colony=G1 | box=shallow | count=3',
);

/** Each kind's row with every column filled that it can have; `needs` leaves a choice of the others. */
const full: Record<Kind, Cells[]> = {
  install: ['package', 'nuc', 'swarm', 'bought colony', 'opening'].map((origin, at) => row(`2025-05-01 install | yard=NS | colony=N${at} | origin=${origin} | supplier=Sandel Road Bees | queen_year=2025 | queen_source=Kestrel | price=174.50 | note=first`)),
  split: rows(
    '2025-05-01 split | colony=G1 | new_colony=N1 | yard=OO | to_yard=LB | queen=moves | new_queen=cell | queen_year=2025 | queen_source=Kestrel | frames_bees=4 | frames_brood=2.5 | frames_stores=1 | note=strong',
    '2025-05-02 split | colony=G1 | new_colony=N2 | queen=stays | new_queen=walk-away',
    '2025-05-03 split | colony=G1 | new_colony=N3 | new_queen=virgin',
    '2025-05-04 split | colony=G1 | new_colony=N4 | new_queen=mated',
  ),
  combine: [row('2025-05-01 combine | colony=G1 | into=G2 | yard=OO | note=weak')],
  requeen: [row('2025-05-01 requeen | colony=G1 | yard=OO | supplier=Sandel Road Bees | queen_year=2025 | queen_source=Bramble | price=38 | note=n')],
  queen: ['seen', 'marked', 'superseded', 'swarmed', 'missing'].map((what, at) => row(`2025-05-0${at + 1} queen | colony=G1 | yard=OO | what=${what} | note=n`)),
  move: [row('2025-05-01 move | colony=G1 | yard=OO | to_yard=LB | note=n')],
  inspection: ['none', 'swarm', 'supersedure', 'emergency'].map((cells, at) =>
    row(`2025-05-0${at + 1} inspection | colony=G1 | yard=OO | frames_bees=8.5 | frames_brood=5 | frames_stores=0 | eggs=yes | queen_seen=no | queen_cells=${cells} | temper=${at + 2} | note=n`)),
  mites: ['alcohol wash', 'sugar roll'].map((method) => row(`2025-05-01 mites | colony=G1 | yard=OO | mites=0 | bees=312 | method=${method} | note=n`)),
  treatment: rows(
    '2025-05-01 treatment | colony=G1 | yard=OO | active_ingredient=formic acid | end_date=2025-05-15 | note=n',
    '2025-05-01 treatment | yard=OO | active_ingredient=something else',
  ),
  feed: rows(
    '2025-05-01 feed | colony=G1 | yard=OO | feed=syrup 1:1 | amount=1.1 | unit=gal | note=n',
    '2025-05-01 feed | colony=G1 | feed=syrup 2:1 | amount=3.333 | unit=l',
    '2025-05-01 feed | colony=G1 | feed=fondant | amount=2.2 | unit=lb',
    '2025-05-01 feed | colony=G1 | feed=pollen substitute | amount=0.45 | unit=kg',
    '2025-05-01 feed | colony=G1 | feed=fondant',
  ),
  'supers on': ['deep', 'medium', 'shallow'].map((box) => row(`2025-05-01 supers on | colony=G1 | yard=OO | box=${box} | count=2 | note=n`)),
  'supers off': ['deep', 'medium', 'shallow'].map((box) => row(`2025-05-01 supers off | colony=G1 | yard=OO | box=${box} | count=3 | note=n`)),
  harvest: rows(
    '2025-07-01 harvest | colony=G1 | yard=OO | gross=61.7 | tare=12.35 | unit=lb | moisture=17.4 | lot=2025-A | note=n',
    '2025-07-01 harvest | yard=OO | gross=31 | tare=31 | unit=kg',
  ),
  stores: rows('2025-09-01 stores | colony=G1 | yard=OO | weight=61.3 | unit=lb | note=n', '2025-09-01 stores | colony=G1 | weight=30 | unit=kg'),
  loss: [row('2025-12-01 loss | colony=G1 | yard=OO | cause=starvation;mites;queen failure;weak in autumn;cold;moisture;robbing;pesticide;bear or vandal;flood;disease;unknown | note=n'), row('2025-12-02 loss | colony=G2')],
  sale: rows('2025-05-01 sale | colony=G1 | yard=OO | price=210 | note=n', '2025-05-01 sale | yard=OO | lot=2025-1 | item=honey | quantity=12 | price=96.05', '2025-05-02 sale | colony=G2 | item=hive | quantity=1'),
  gift: [row('2025-05-01 gift | colony=G1 | yard=OO | note=n')],
  absconded: [row('2025-05-01 absconded | colony=G1 | yard=OO | note=n')],
  stock: rows('2025-05-01 stock | item=deep box | quantity=12 | from=supplier | to=shed | note=n', '2025-05-01 stock | item=foundation, lb | quantity=2.5 | from=shed | to=OO', '2025-05-01 stock | item=deep box | quantity=1 | from=LB | to=scrap'),
  purchase: rows('2025-05-01 purchase | item=frames | supplier=Sandel Road Bees | quantity=100 | price=109.99 | to=shed | note=n', '2025-05-01 purchase | item=frames | to=LB', '2025-05-01 purchase | item=smoker'),
  work: rows('2025-05-01 work | yard=OO | colony=G1 | hours=2.5 | people=2 | miles=31 | task=mowing | note=n', '2025-05-01 work | hours=1'),
  note: rows('2025-05-01 note | yard=OO | colony=G1 | note=all calm', '2025-05-01 note | note=a "quoted" word, and a comma'),
};

describe.each(kinds)('a row of kind “%s”', (kind) => {
  test('is shown here in each of its columns', () => {
    const used = new Set(full[kind].flatMap((cells) => Object.keys(cells)));
    expect([...used].toSorted()).toEqual(['date', 'entry', 'note', ...entryForms[kind].must, ...entryForms[kind].may].filter((column, at, all) => all.indexOf(column) === at).toSorted());
  });

  test('is taken and comes back cell by cell', async () => {
    const store = memoryStore();
    const file = fileText([...opened, row('2025-04-01 install | yard=NS | colony=X1 | origin=swarm'), ...full[kind]]);
    const found = await imported(store, file);
    expect(found.toSortOut).toEqual([]);
    expect([found.read, found.entries.length]).toEqual([opened.length + 1 + full[kind].length, found.read]);
    expect((await exported(store)).split('\n').toSorted()).toEqual(file.split('\n').toSorted());
    for (const entry of await standingEntries(store)) expect(rulesOf(entry.kind).body.parse(entry.body)).toEqual(entry.body);
    await store.close();
  });

  test('without one of its necessary cells names that cell and loses nothing else', async () => {
    const [first = {}] = full[kind];
    for (const column of entryForms[kind].must) {
      const { [column]: _, ...rest } = first;
      const found = await previewed(memoryStore(), fileText([...opened, rest, row('2025-06-01 note | note=still taken')]));
      expect(found.toSortOut).toMatchObject([{ line: opened.length + 2, column, value: '' }]);
      expect(found.entries).toHaveLength(opened.length + 1);
    }
  });

  test('with a cell of another kind names that cell', async () => {
    const [first = {}] = full[kind];
    const strange = columns.filter((column) => column !== 'date' && column !== 'entry' && column !== 'note' && !entryForms[kind].must.includes(column) && !entryForms[kind].may.includes(column));
    for (const column of strange) {
      const found = await previewed(memoryStore(), fileText([...opened, { ...first, [column]: '1' }]));
      expect(found.toSortOut).toMatchObject([{ line: opened.length + 2, column, value: '1', sentence: expect.stringContaining(`has no ${column}`) }]);
    }
  });
});

test.each<[string, string, string, string]>([
  ['2025-02-29 inspection | colony=G1', 'date', '2025-02-29', 'no day of the calendar'],
  ['31/4/2025 inspection | colony=G1', 'date', '31/4/2025', 'no day of the calendar'],
  ['4/19/25 inspection | colony=G1', 'date', '4/19/25', 'no day of the calendar'],
  ['0025-05-01 inspection | colony=G1', 'date', '0025-05-01', 'year of “0025-05-01” is mistyped'],
  ['9999-12-31 inspection | colony=G1', 'date', '9999-12-31', 'is mistyped'],
  ['2025-05-01 treatment | colony=G1 | active_ingredient=thymol | end_date=9999-12-31', 'end_date', '9999-12-31', 'is mistyped'],
  ['2025-05-01 look | colony=G1', 'entry', 'look', 'not a kind of entry'],
  ['2025-05-01 mites | colony=G1 | mites=-3 | bees=300', 'mites', '-3', 'below zero'],
  ['2025-05-01 mites | colony=G1 | mites=301 | bees=300', 'mites', '301', 'changed places'],
  ['2025-05-01 mites | colony=G1 | mites=3 | bees=0', 'bees', '0', 'below 1'],
  ['2025-05-01 mites | colony=G1 | mites=2.5 | bees=300', 'mites', '2.5', 'whole'],
  ['2025-05-01 mites | colony=G1 | mites=some | bees=300', 'mites', 'some', 'not a number'],
  ['2025-05-01 mites | colony=G1 | mites=3 | bees=300 | method=guess', 'method', 'guess', 'alcohol wash'],
  ['2025-05-01 inspection | colony=G1 | frames_bees=4,5', 'frames_bees', '4,5', 'Write a point, as 4.5'],
  ['2025-05-01 inspection | colony=G1 | frames_bees=1e3', 'frames_bees', '1e3', 'powers of ten'],
  ['2025-05-01 stock | item=deep boxes | quantity=1.5 | from=supplier | to=shed', 'quantity', '1.5', 'Write 1 or 2'],
  ['2025-05-01 inspection | colony=G1 | frames_bees=Infinity', 'frames_bees', 'Infinity', 'not a number'],
  ['2025-05-01 inspection | colony=G1 | temper=6', 'temper', '6', 'above 5'],
  ['2025-05-01 inspection | colony=G1 | eggs=maybe', 'eggs', 'maybe', 'neither yes nor no'],
  ['2025-05-01 treatment | colony=G1 | active_ingredient=thymol | end_date=2025-04-30', 'end_date', '2025-04-30', 'before the start'],
  ['2025-05-01 treatment | colony=G1 | active_ingredient=thymol | end_date=2027-05-01', 'end_date', '2027-05-01', 'more than a year after the start'],
  ['2025-05-01 treatment | active_ingredient=thymol', 'colony', '', 'names its colony, or the yard'],
  ['2025-05-01 feed | colony=G1 | feed=fondant | amount=2', 'unit', '', 'no unit'],
  ['2025-05-01 harvest | colony=G1 | gross=10 | tare=12 | unit=lb', 'tare', '12', 'more than the full weight'],
  ['2025-05-01 harvest | colony=G1 | gross=10 | tare=2 | unit=gal', 'unit', 'gal', 'lb or kg'],
  ['2025-05-01 loss | colony=G1 | cause=mites;bad luck', 'cause', 'mites;bad luck', '“bad luck” is not a cause'],
  ['2025-05-01 requeen | colony=G1 | price=38.999', 'price', '38.999', 'parts of a cent'],
  ['2025-05-01 requeen | colony=G1 | queen_year=2026', 'queen_year', '2026', 'cannot be there'],
  ['2025-05-01 stock | item=box | quantity=1 | from=shed | to=attic', 'to', 'attic', 'no place known here'],
  ['2025-05-01 move | colony=G1 | to_yard=Nowhere', 'to_yard', 'Nowhere', 'No yard is called “Nowhere”'],
  // Contradictions with the record.
  ['2025-05-01 install | yard=OO | colony=G1 | origin=nuc', 'colony', 'G1', 'A colony called G1 is alive on 1 May 2025'],
  ['2025-05-01 split | colony=G1 | new_colony=G2', 'new_colony', 'G2', 'A colony called G2 is alive'],
  ['2025-05-01 split | colony=G1 | new_colony=G1', 'new_colony', 'G1', 'its own label'],
  ['2025-05-01 combine | colony=G1 | into=G1', 'into', 'G1', 'into itself'],
  ['2025-05-01 combine | colony=G1 | into=D1', 'into', 'D1', 'was recorded lost on 20 April 2025'],
  ['2025-05-01 combine | colony=G1 | into=Z9', 'into', 'Z9', 'No colony called “Z9”'],
  ['2025-05-01 inspection | colony=Z9', 'colony', 'Z9', 'No colony called “Z9” is recorded'],
  ['2025-05-01 inspection | colony=D1', 'colony', 'D1', 'was recorded lost on 20 April 2025'],
  ['2025-05-01 loss | colony=D1', 'colony', 'D1', 'was recorded lost on 20 April 2025'],
  ['2025-03-31 inspection | colony=G1', 'colony', 'G1', 'No colony called “G1” is recorded'],
  ['2025-05-01 supers off | colony=G1 | box=deep | count=4', 'count', '4', 'only 3 are recorded'],
  ['2025-05-01 supers off | colony=G2 | box=deep | count=1', 'count', '1', 'none is recorded'],
  ['2025-05-01 inspection | colony==1+1', 'colony', '=1+1', 'spreadsheet formula'],
])('“%s” is set aside: %s', async (text, column, value, sentence) => {
  const dead = rows('2025-04-01 install | yard=OO | colony=D1 | origin=nuc', '2025-04-20 loss | colony=D1');
  const found = await previewed(memoryStore(), fileText([...opened, ...dead, row(text), row('2025-06-01 note | note=still taken')]));
  expect(found.toSortOut).toMatchObject([{ line: opened.length + dead.length + 2, column, value, sentence: expect.stringContaining(sentence) }]);
  expect([found.entries.length, found.repeats.length, found.read]).toEqual([found.read - 1, 0, opened.length + dead.length + 2]);
  expect(found.toSortOut[0]?.sentence).toMatch(/[.]$/);
});

test('every column is read by a form, so that none is silently ignored', () => {
  for (const column of Object.keys(fields)) expect(column === 'note' || kinds.some((kind) => entryForms[kind].must.includes(column as never) || entryForms[kind].may.includes(column as never)), column).toBe(true);
});

test('the order of the rows in the file does not matter, apart from rows of one day', async () => {
  const season: Cells[] = rows(
    '2025-04-01 install | yard=OO | colony=G1 | origin=package | queen_year=2025',
    '2025-04-02 install | yard=LB | colony=G2 | origin=opening',
    '2025-04-20 queen | colony=G1 | what=marked',
    '2025-05-01 split | colony=G1 | new_colony=G3 | to_yard=LB | queen=moves | new_queen=cell',
    '2025-05-10 supers on | colony=G1 | box=medium | count=2',
    '2025-06-01 move | colony=G3 | to_yard=OO',
    '2025-07-01 harvest | colony=G1 | gross=61.7 | tare=12.35 | unit=lb',
    '2025-07-02 supers off | colony=G1 | box=medium | count=2',
    '2025-08-01 loss | colony=G2 | cause=mites',
    '2025-09-01 split | colony=G3 | new_colony=G2',
    '2025-10-01 combine | colony=G2 | into=G1',
  );
  const straight = memoryStore();
  expect((await imported(straight, fileText(season))).toSortOut).toEqual([]);
  const [text, states] = [await exported(straight), await statesWithoutIds(straight)];
  await fc.assert(
    fc.asyncProperty(fc.shuffledSubarray(season, { minLength: season.length }), async (shuffled) => {
      const store = memoryStore();
      await imported(store, fileText(shuffled));
      expect([await exported(store), await statesWithoutIds(store)]).toEqual([text, states]);
      await store.close();
    }),
    { numRuns: 40 },
  );
  // Entered one file a row, in any order in which each can stand at all, it is the same record again.
  const byOne = memoryStore();
  const [first = {}, second = {}, , split = {}, ...rest] = season;
  for (const one of [first, second, split, ...rest, season[2] ?? {}]) expect((await imported(byOne, fileText([one]))).toSortOut).toEqual([]);
  expect([await exported(byOne), await statesWithoutIds(byOne)]).toEqual([text, states]);
});

test('rows of one day apply in the file’s order', async () => {
  const day = rows('2025-04-01 install | yard=OO | colony=G1 | origin=package', '2025-04-01 loss | colony=G1', '2025-04-01 install | yard=OO | colony=G1 | origin=nuc', '2025-04-01 inspection | colony=G1');
  const straight = memoryStore();
  expect((await imported(straight, fileText(day))).toSortOut).toEqual([]);
  expect((await straight.statesByLabel(['G1'])).map(({ how, looks }) => [how, looks.length])).toEqual([['lost', 0], ['alive', 1]]);
  const backwards = await previewed(memoryStore(), fileText(day.toReversed()));
  // Backwards, it is looked at before it is there; what follows is a nuc that is lost, and a package after it.
  expect(backwards.toSortOut.map(({ line }) => line)).toEqual([2]);
  await acts.undo(straight);
  expect(await straight.states()).toEqual([]);
});
