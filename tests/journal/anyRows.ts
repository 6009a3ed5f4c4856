import fc from 'fast-check';
import { addDays, day } from '#shared/days.ts';
import { kinds, type Cells, type Kind } from '#shared/entryForms.ts';
import { yardCodes } from './trialBook.ts';

const first = day('2024-02-20');
const label = fc.constantFrom('G1', 'G2', 'G3', 'G4', 'N5', 'N6');
const anyDay = fc.integer({ min: 0, max: 420 }).map((days) => addDays(first, days) as string);
const yard = fc.constantFrom(...yardCodes);
const small = fc.integer({ min: 1, max: 3 }).map(String);
const amount = fc.constantFrom('0', '0.5', '4', '12.35', '103.4');
const note = fc.constantFrom('', 'wet spring', 'two words, "quoted"', 'line one\nline two', 'Zeile mit ß');

/** The cells of each kind, apart from the day, kind, note and colony. */
const forms: Record<Kind, fc.Arbitrary<Cells>> = {
  install: fc.record({ yard, origin: fc.constantFrom('package', 'nuc', 'swarm', 'bought colony', 'opening'), queen_year: fc.constantFrom('', '2023'), supplier: fc.constantFrom('', 'Sandel Road Bees') }),
  split: fc.record({ new_colony: label, to_yard: fc.constantFrom('', ...yardCodes), queen: fc.constantFrom('', 'stays', 'moves'), new_queen: fc.constantFrom('', 'cell', 'mated'), queen_year: fc.constantFrom('', '2023') }),
  combine: fc.record({ into: label }),
  requeen: fc.record({ queen_year: fc.constantFrom('', '2024'), price: fc.constantFrom('', '38', '38.50') }),
  queen: fc.record({ what: fc.constantFrom('seen', 'marked', 'superseded', 'swarmed', 'missing') }),
  move: fc.record({ to_yard: yard }),
  inspection: fc.record({ frames_bees: amount, eggs: fc.constantFrom('', 'yes', 'no'), temper: fc.constantFrom('', '1', '5') }),
  mites: fc.record({ mites: small, bees: fc.constantFrom('300', '312'), method: fc.constantFrom('', 'alcohol wash') }),
  treatment: fc.record({ active_ingredient: fc.constantFrom('oxalic acid', 'thymol') }),
  feed: fc.record({ feed: fc.constantFrom('syrup 2:1', 'fondant'), amount: fc.constantFrom('1.1', '2'), unit: fc.constantFrom('gal', 'l', 'lb', 'kg') }),
  'supers on': fc.record({ box: fc.constantFrom('deep', 'medium'), count: small }),
  'supers off': fc.record({ box: fc.constantFrom('deep', 'medium'), count: small }),
  harvest: fc.record({ gross: fc.constantFrom('61.7', '80'), tare: fc.constantFrom('11.3', '12'), unit: fc.constantFrom('lb', 'kg'), moisture: fc.constantFrom('', '17.4') }),
  stores: fc.record({ weight: amount, unit: fc.constantFrom('lb', 'kg') }),
  loss: fc.record({ cause: fc.constantFrom('', 'mites', 'mites;starvation') }),
  sale: fc.record({ price: fc.constantFrom('', '210') }),
  gift: fc.constant({}),
  absconded: fc.constant({}),
  stock: fc.record({ item: fc.constant('deep box'), quantity: small, from: fc.constantFrom('supplier', 'shed', ...yardCodes), to: fc.constantFrom('shed', 'scrap', ...yardCodes) }),
  purchase: fc.record({ item: fc.constant('frames'), quantity: small, price: fc.constantFrom('', '19.99'), to: fc.constantFrom('', 'shed') }),
  work: fc.record({ hours: amount, task: fc.constantFrom('', 'mowing') }),
  note: fc.constant({}),
};

const withoutColony: readonly Kind[] = ['stock', 'purchase'];

function rowOf(kind: Kind): fc.Arbitrary<Cells> {
  return fc.tuple(anyDay, label, forms[kind], note).map(([date, colony, cells, words]) => {
    const row: Cells = { date, entry: kind, ...cells };
    if (!withoutColony.includes(kind)) row.colony = colony;
    const note = kind === 'note' && words === '' ? 'all calm' : words;
    if (note !== '') row.note = note;
    for (const [column, value] of Object.entries(row)) if (value === '') delete row[column as keyof Cells];
    return row;
  });
}

/** A readable row of any kind; whether it can stand depends on the record. Kinds that end a colony are rarer. */
export const anyRow: fc.Arbitrary<Cells> = fc.oneof(
  ...kinds.map((kind) => ({ arbitrary: rowOf(kind), weight: kind === 'install' || kind === 'split' ? 5 : kind === 'gift' || kind === 'absconded' || kind === 'sale' ? 1 : 2 })),
);

/** Four colonies, so that most rows find theirs. */
export const founding: readonly Cells[] = ['G1', 'G2', 'G3', 'G4'].map((colony, at) => ({
  date: addDays(first, at * 9), entry: 'install', yard: yardCodes[at % 3] ?? 'OO', colony, origin: 'package', queen_year: '2023',
}));

export type Act =
  | { readonly what: 'enter'; readonly rows: readonly Cells[] }
  | { readonly what: 'import'; readonly rows: readonly Cells[] }
  | { readonly what: 'strike'; readonly at: number }
  | { readonly what: 'replace'; readonly at: number; readonly cells: Cells }
  | { readonly what: 'undo' }
  | { readonly what: 'undo that'; readonly at: number }
  | { readonly what: 'redo' }
  | { readonly what: 'mend'; readonly at: number; readonly cells: Cells }
  | { readonly what: 'enter ready' }
  | { readonly what: 'set aside'; readonly at: number };

const at = fc.nat({ max: 1000 });
export const anyAct: fc.Arbitrary<Act> = fc.oneof(
  { weight: 8, arbitrary: fc.record({ what: fc.constant('enter' as const), rows: fc.array(anyRow, { minLength: 1, maxLength: 2 }) }) },
  { weight: 4, arbitrary: fc.record({ what: fc.constant('import' as const), rows: fc.array(anyRow, { minLength: 1, maxLength: 12 }) }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('strike' as const), at }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('replace' as const), at, cells: anyRow }) },
  { weight: 2, arbitrary: fc.constant({ what: 'undo' as const }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('undo that' as const), at }) },
  { weight: 2, arbitrary: fc.constant({ what: 'redo' as const }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('mend' as const), at, cells: anyRow }) },
  { weight: 1, arbitrary: fc.constant({ what: 'enter ready' as const }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('set aside' as const), at }) },
);
