import type { DemoYard } from './demoOperation.ts';

/** The one seed of the Ossar Valley book. */
export const ossarSeed = 4897;

export const ossarYards = [
  { code: 'QY', name: 'Quarry', room: 24, minutes: 18 },
  { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 },
  { code: 'OO', name: 'Old Orchard', room: 16, minutes: 6 },
  { code: 'MR', name: 'Millrace', room: 20, minutes: 22 },
  { code: 'KF', name: 'Kiln Field', room: 24, minutes: 41 },
  { code: 'NS', name: 'North Slope', room: 12, minutes: 55 },
] as const satisfies readonly DemoYard[];

export type YardCode = (typeof ossarYards)[number]['code'];

export const packageSeller = 'Sandel Road Bees';
export const nucSeller = 'Upper Ferry Apiary';
/** Where boxes, sugar and jars come from. */
export const hardwareSeller = 'farm store';

/** Queen lines. Their names carry no effect on anything: an analysis that ranks them ranks noise. */
export const lines = ['Kestrel', 'Bramble', 'Tarn', 'Ossar'] as const;

/** Honey of these yards is put on the scale together; the other four weigh every super. */
export const weighedTogether: ReadonlySet<string> = new Set(['OO', 'MR']);

/** What a yard does for the bees that stand in it. */
export const yardTraits: Readonly<Record<YardCode, { flow: number; goldenrod: number; winter: number }>> = {
  QY: { flow: 1.05, goldenrod: 0.45, winter: 0 },
  LB: { flow: 1.1, goldenrod: 0.5, winter: 0 },
  OO: { flow: 0.95, goldenrod: 0.25, winter: -0.15 },
  MR: { flow: 1, goldenrod: 0.3, winter: 0 },
  KF: { flow: 0.9, goldenrod: 1.15, winter: -0.1 },
  NS: { flow: 0.85, goldenrod: 0.3, winter: 1.05 },
};

export type ByYard = Partial<Record<YardCode, number>>;

export interface SeasonPlan {
  readonly year: number;
  /** Packages late in April and nucs in the middle of May; a yard's first colonies are always bought ones. */
  readonly packages: ByYard;
  readonly nucs: ByYard;
  /** Colonies the keeper wants in each yard once the splits are made. */
  readonly goal: ByYard;
  /** Median mites per 100 bees in August, before treatment. */
  readonly mites: number;
  /** How hard the coming winter is: added to the log-odds of loss. */
  readonly winter: number;
  /** Honey of the year against an average one. */
  readonly flow: number;
  readonly active: string;
  /** First day, month and day, on which the August treatment goes on. */
  readonly treatFrom: readonly [number, number];
  /** Queens bought to replace old ones. */
  readonly queens: number;
}

export const seasonPlans: readonly SeasonPlan[] = [
  {
    year: 2021, packages: { OO: 5, QY: 3 }, nucs: { QY: 4, OO: 2 }, goal: { OO: 8, QY: 9 },
    mites: 1.8, winter: -0.45, flow: 0.85, active: 'amitraz', treatFrom: [8, 18], queens: 0,
  },
  {
    year: 2022, packages: { LB: 5, NS: 4 }, nucs: { LB: 2, NS: 2 }, goal: { OO: 10, QY: 11, LB: 8, NS: 7 },
    mites: 2.8, winter: -0.05, flow: 1.05, active: 'thymol', treatFrom: [8, 20], queens: 4,
  },
  {
    year: 2023, packages: { KF: 6 }, nucs: { KF: 2, NS: 2 }, goal: { OO: 11, QY: 13, LB: 10, NS: 9, KF: 9 },
    mites: 2.0, winter: -0.6, flow: 0.9, active: 'formic acid', treatFrom: [8, 12], queens: 8,
  },
  {
    year: 2024, packages: { MR: 7 }, nucs: { MR: 2, NS: 2 }, goal: { OO: 13, QY: 16, LB: 12, NS: 11, KF: 14, MR: 10 },
    mites: 3.6, winter: 0.15, flow: 1.15, active: 'amitraz', treatFrom: [9, 4], queens: 12,
  },
  {
    year: 2025, packages: { MR: 4, NS: 3, LB: 3 }, nucs: { QY: 4, KF: 4 }, goal: { OO: 15, QY: 20, LB: 17, NS: 12, KF: 18, MR: 14 },
    mites: 2.3, winter: -0.3, flow: 1, active: 'formic acid', treatFrom: [8, 10], queens: 18,
  },
  {
    year: 2026, packages: { NS: 3, MR: 3 }, nucs: { LB: 4 }, goal: { OO: 15, QY: 20, LB: 19, NS: 11, KF: 21, MR: 17 },
    mites: 2.4, winter: 0.1, flow: 1.05, active: 'formic acid', treatFrom: [8, 12], queens: 20,
  },
];

export function planOf(year: number): SeasonPlan {
  const plan = seasonPlans.find((candidate) => candidate.year === year);
  if (plan === undefined) throw new RangeError(`no plan for the season of ${year}`);
  return plan;
}

/** Prices of 2021 in dollars; they rise about 3.5 % a year, money in whole dollars or half ones. */
const prices2021 = {
  package: 138, nuc: 184, queen: 36,
  'deep box': 23.5, 'medium super': 18, 'deep frame': 2.6, 'medium frame': 2.4, 'bottom board': 17, 'inner cover': 13,
  'outer cover': 21, 'entrance reducer': 2, stand: 19, feeder: 14.5, 'queen excluder': 12,
  /** A pound. */
  sugar: 0.62, 'honey jar, 1 lb': 0.85, honey: 9,
} as const;

export type Priced = keyof typeof prices2021;

export function priceOf(what: Priced, year: number): number {
  let risen: number = prices2021[what];
  for (let passed = 2021; passed < year; passed += 1) risen *= 1.035;
  return risen < 5 ? Math.round(risen * 20) / 20 : Math.round(risen * 2) / 2;
}
