import type { ReactNode } from 'react';
import type { ColonyRow } from '#shared/contract/colonies.ts';
import type { MassUnit } from '#shared/units.ts';
import { dayTight, fixed, massFromPounds, missing, number } from '../../parts/format.ts';
import { QueenMark } from '../../parts/QueenMark.tsx';
import { words } from './words.ts';

export type Which = 'living' | 'ended' | 'all';

export interface ColonyColumn {
  readonly key: string;
  readonly head: string;
  /** Second line of the head: the unit. */
  readonly unit?: string;
  readonly width: number;
  readonly number?: boolean;
  /** What it sorts by; null stands last either way. */
  readonly by: (row: ColonyRow) => string | number | null;
  readonly show: (row: ColonyRow) => ReactNode;
  readonly total?: (rows: readonly ColonyRow[]) => ReactNode;
}

/** Mites in 100 bees; null without a count. */
export function per100(row: ColonyRow): number | null {
  return row.mites === null || row.bees === null || row.bees === 0 ? null : (100 * row.mites) / row.bees;
}

/** The columns that the chosen colonies call for; honey in the book's own unit. */
export function columnsFor(which: Which, massUnit: MassUnit): readonly ColonyColumn[] {
  const label: ColonyColumn = { key: 'label', head: words.colony, width: 80, by: (row) => row.label, show: (row) => row.label };
  const yard: ColonyColumn = { key: 'yard', head: words.yard, width: 100, by: (row) => row.yardName, show: (row) => row.yardName };
  const queen: ColonyColumn = {
    key: 'queen',
    head: words.queen,
    width: 104,
    by: (row) => row.queen?.year ?? null,
    show: (row) => <QueenMark queen={row.queen} />,
  };
  const start: ColonyColumn = { key: 'start', head: words.start, width: 76, by: (row) => row.start, show: (row) => dayTight(row.start) };
  const honey: ColonyColumn = {
    key: 'honey',
    head: words.honey,
    unit: massUnit,
    width: 58,
    number: true,
    by: (row) => row.honeyLb,
    show: (row) => massFromPounds(row.honeyLb, massUnit),
    total: (rows) => {
      const weighed = rows.filter((row) => row.honeyLb !== null);
      return weighed.length === 0 ? missing : massFromPounds(weighed.reduce((sum, row) => sum + (row.honeyLb ?? 0), 0), massUnit);
    },
  };
  const origin: ColonyColumn = { key: 'origin', head: words.origin, width: 108, by: (row) => row.origin, show: (row) => words.origins[row.origin] };
  const end: ColonyColumn = { key: 'end', head: words.end, width: 84, by: (row) => row.end, show: (row) => dayTight(row.end) };
  const how: ColonyColumn = { key: 'how', head: words.how, width: 116, by: (row) => row.how, show: (row) => words.endings[row.how] };
  const cause: ColonyColumn = {
    key: 'cause',
    head: words.cause,
    width: 130,
    by: (row) => row.causes[0] ?? null,
    show: (row) => (row.causes.length === 0 ? missing : row.causes.join(', ')),
  };
  if (which === 'ended') return [label, yard, queen, start, origin, end, how, cause];
  if (which === 'all') return [label, yard, queen, start, origin, how, end, cause];
  return [
    label,
    yard,
    queen,
    start,
    { key: 'look', head: words.lastLook, width: 76, by: (row) => row.lastLook, show: (row) => dayTight(row.lastLook) },
    frames('bees', words.bees, (row) => row.framesBees),
    frames('brood', words.brood, (row) => row.framesBrood),
    frames('stores', words.stores, (row) => row.framesStores),
    {
      key: 'mites',
      head: words.mites,
      unit: words.per100,
      width: 64,
      number: true,
      by: per100,
      show: (row) => fixed(per100(row), 1),
    },
    {
      key: 'supers',
      head: words.supers,
      width: 57,
      number: true,
      by: (row) => row.supers,
      show: (row) => number(row.supers),
      total: (rows) => number(rows.reduce((sum, row) => sum + row.supers, 0)),
    },
    honey,
  ];
}

function frames(key: string, head: string, of: (row: ColonyRow) => number | null): ColonyColumn {
  return { key, head, unit: words.frames, width: 57, number: true, by: of, show: (row) => number(of(row), 1) };
}
