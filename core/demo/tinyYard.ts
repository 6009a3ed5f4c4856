import { day, dayNumber } from '#shared/days.ts';
import type { Cells, Kind } from '#shared/entryForms.ts';
import { entryRow, type DemoAct, type DemoOperation, type Values } from './demoOperation.ts';
import { nucSeller, packageSeller } from './ossarPlan.ts';

const labels = ['H-1', 'H-2', 'H-3', 'H-4', 'H-5'] as const;

/** Frames of bees, brood and stores by round, one triple per colony; null where the colony was not opened. */
const rounds: readonly (readonly [string, readonly (readonly [number, number, number] | null)[]])[] = [
  ['2025-05-10', [[3, 1.5, 2], [3.5, 2, 2], [3, 1.5, 2.5], null, null]],
  ['2025-05-24', [[3, 2, 2.5], [3, 2.5, 3], [2.5, 1.5, 2], [5, 3, 2], [5.5, 3.5, 2]]],
  ['2025-06-07', [[5, 3.5, 2.5], [4.5, 3, 3], [4, 2.5, 3], [7.5, 5, 2.5], [8, 5, 3]]],
  ['2025-06-21', [[7.5, 5, 3], [6.5, 4.5, 3], [5.5, 4, 3.5], [11, 7, 3], [11.5, 7, 3.5]]],
  ['2025-07-12', [[11, 6, 4], [9.5, 5.5, 3.5], [7.5, 4.5, 4], [15, 7.5, 4], [15.5, 8, 4.5]]],
  ['2025-08-09', [[12, 5, 5], [11, 5, 4], [8.5, 4, 4.5], [14.5, 5.5, 5], [14, 5.5, 5.5]]],
  ['2025-09-06', [[10, 3.5, 5.5], [9, 3, 4], [6.5, 2.5, 4], [11.5, 4, 6], [11, 3.5, 6]]],
];

/** One yard, five colonies, one season; two of the five were dead by spring. Written out, so nothing is drawn. */
export function tinyYard(): DemoOperation {
  return {
    name: 'Home Yard', lastDay: day('2026-03-31'), yards: [{ code: 'HY', name: 'Home Yard', room: 8, minutes: 0 }],
    acts: [...buildUp(), ...rounds.map(roundAct), ...honey(), ...autumnAndWinter()].sort((one, other) => (one.at < other.at ? -1 : 1)),
  };
}

function row(on: string, kind: Kind, values: Values): Cells {
  return entryRow(dayNumber(day(on)), kind, values);
}

function about(on: string, kind: Kind, colony: string, values: Values): Cells {
  return row(on, kind, { yard: 'HY', colony, ...values });
}

function buildUp(): DemoAct[] {
  const bought: [string, number, number][] = [
    ['deep box', 10, 24.5], ['deep frame', 100, 2.75], ['medium super', 6, 19], ['medium frame', 60, 2.5], ['bottom board', 5, 18], ['inner cover', 5, 14],
    ['outer cover', 5, 22], ['entrance reducer', 5, 2.25], ['stand', 5, 20], ['feeder', 5, 15.5], ['queen excluder', 3, 13],
  ];
  const perHive: [string, number][] = [
    ['deep box', 1], ['deep frame', 10], ['bottom board', 1], ['inner cover', 1], ['outer cover', 1], ['entrance reducer', 1], ['stand', 1], ['feeder', 1],
  ];
  const hive = (on: string, colonies: readonly string[], values: Values) => colonies.map((colony) => about(on, 'install', colony, values));
  const carry = (on: string, hives: number) => perHive.map(([item, each]) => row(on, 'stock', { item, quantity: each * hives, from: 'shed', to: 'HY' }));
  return [
    {
      at: '2025-04-12 20:10', title: 'Boxes and frames bought',
      rows: bought.flatMap(([item, quantity, each]) => [
        row('2025-04-12', 'purchase', { item, quantity, price: quantity * each }),
        row('2025-04-12', 'stock', { item, quantity, from: 'supplier', to: 'shed' }),
      ]),
    },
    {
      at: '2025-04-26 20:30', title: 'Three packages hived',
      rows: [
        ...hive('2025-04-26', labels.slice(0, 3), { origin: 'package', supplier: packageSeller, queen_year: 2025, queen_source: 'Kestrel', price: 158 }),
        ...labels.slice(0, 3).map((colony) => about('2025-04-26', 'feed', colony, { feed: 'syrup 1:1', amount: 1, unit: 'gal' })),
        ...carry('2025-04-26', 3),
        row('2025-04-26', 'work', { yard: 'HY', hours: 2, people: 1, task: 'hiving packages' }),
      ],
    },
    {
      at: '2025-05-17 20:15', title: 'Two nucs hived',
      rows: [
        ...hive('2025-05-17', labels.slice(3), { origin: 'nuc', supplier: nucSeller, queen_year: 2024, queen_source: 'Tarn', price: 211 }),
        ...carry('2025-05-17', 2),
      ],
    },
    {
      at: '2025-06-28 21:00', title: 'Second deeps',
      rows: [row('2025-06-28', 'stock', { item: 'deep box', quantity: 4, from: 'shed', to: 'HY' }), row('2025-06-28', 'stock', { item: 'deep frame', quantity: 40, from: 'shed', to: 'HY' })],
    },
  ];
}

function roundAct([on, seen]: (typeof rounds)[number]): DemoAct {
  const rows = seen.flatMap((frames, place) => {
    const colony = labels[place];
    if (frames === null || colony === undefined) return [];
    const [bees, brood, stores] = frames;
    const queenSeen = (place + Number(on.slice(8))) % 3 === 0 ? 'yes' : 'no';
    return [about(on, 'inspection', colony, { frames_bees: bees, frames_brood: brood, frames_stores: stores, eggs: 'yes', queen_seen: queenSeen, queen_cells: 'none', temper: place === 2 ? 3 : 1 })];
  });
  return { at: `${on} 20:45`, title: `Round at Home Yard, ${rows.length} colonies`, rows: [...rows, row(on, 'work', { yard: 'HY', hours: 1, people: 1, task: 'round' })] };
}

function honey(): DemoAct[] {
  const supered = labels.slice(3);
  const supers = (on: string, kind: 'supers on' | 'supers off', count: number) => supered.map((colony) => about(on, kind, colony, { box: 'medium', count }));
  const way = (on: string, count: number, from: string, to: string) => [
    row(on, 'stock', { item: 'medium super', quantity: count, from, to }), row(on, 'stock', { item: 'medium frame', quantity: 10 * count, from, to }),
  ];
  const weighed: [string, number, number][] = [['H-4', 49.5, 15.5], ['H-4', 38, 16], ['H-5', 51, 15.5], ['H-5', 44.5, 16.5]];
  return [
    { at: '2025-06-21 21:10', title: 'Supers on', rows: [...supers('2025-06-21', 'supers on', 1), ...way('2025-06-21', 2, 'shed', 'HY')] },
    { at: '2025-07-05 20:20', title: 'More supers on', rows: [...supers('2025-07-05', 'supers on', 1), ...way('2025-07-05', 2, 'shed', 'HY')] },
    {
      at: '2025-08-02 21:15', title: 'Harvest at Home Yard',
      rows: [
        ...supers('2025-08-02', 'supers off', 2), ...way('2025-08-02', 4, 'HY', 'shed'),
        ...weighed.map(([colony, gross, tare]) => about('2025-08-02', 'harvest', colony, { gross, tare, unit: 'lb', moisture: 17.4, lot: '2025-1' })),
      ],
    },
    {
      at: '2025-08-09 21:20', title: 'Mite washes and treatment',
      rows: [
        about('2025-08-09', 'mites', 'H-3', { mites: 14, bees: 300, method: 'alcohol wash' }),
        about('2025-08-09', 'mites', 'H-4', { mites: 5, bees: 300, method: 'alcohol wash' }),
        row('2025-08-09', 'treatment', { yard: 'HY', active_ingredient: 'formic acid', end_date: '2025-08-23' }),
      ],
    },
  ];
}

function autumnAndWinter(): DemoAct[] {
  const fed = (on: string, gallons: readonly number[]) =>
    gallons.flatMap((amount, place) => (amount === 0 ? [] : [about(on, 'feed', labels[place] ?? '', { feed: 'syrup 2:1', amount, unit: 'gal' })]));
  const stores = [78, 49, 66, 84, 81];
  return [
    { at: '2025-09-06 21:05', title: 'Feeding', rows: fed('2025-09-06', [1.5, 1.5, 2, 0, 1]) },
    { at: '2025-09-27 20:10', title: 'Feeding', rows: fed('2025-09-27', [1, 1, 1.5, 1, 0]) },
    { at: '2025-10-11 20:05', title: 'Stores weighed', rows: stores.map((weight, place) => about('2025-10-11', 'stores', labels[place] ?? '', { weight, unit: 'lb' })) },
    { at: '2025-11-29 19:40', title: 'Treatment at Home Yard', rows: [row('2025-11-29', 'treatment', { yard: 'HY', active_ingredient: 'oxalic acid', end_date: '2025-11-29' })] },
    { at: '2026-01-18 20:00', title: 'H-3 found dead', rows: [about('2026-01-17', 'loss', 'H-3', { cause: 'mites', note: 'a cupful of bees, spotty capped brood' })] },
    { at: '2026-03-07 20:00', title: 'H-2 found dead', rows: [about('2026-03-07', 'loss', 'H-2', { cause: 'starvation', note: 'heads in the cells' })] },
    { at: '2026-03-28 20:25', title: 'Look in at Home Yard', rows: [row('2026-03-28', 'note', { yard: 'HY', note: 'three flying, pollen coming in' })] },
  ];
}
