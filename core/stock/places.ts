import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Place } from '#core/journal/bodyParts.ts';
import type { Names } from '#core/journal/kindRules.ts';

/** A place of the equipment account as one word: `shed`, `y3` a yard, `c12` a colony; the rest lie outside. */
export type PlaceKey = 'supplier' | 'shed' | 'scrap' | 'sold' | `y${number}` | `c${number}`;

/** Where equipment comes from and where it ends; nothing that lies there is counted as there. */
export const outside = ['supplier', 'scrap', 'sold'] as const;
export type Outside = (typeof outside)[number];

export function isOutside(key: PlaceKey): key is Outside {
  return key === 'supplier' || key === 'scrap' || key === 'sold';
}

export function yardKey(yard: YardId): PlaceKey {
  return `y${yard}`;
}

export function colonyKey(colony: ColonyId): PlaceKey {
  return `c${colony}`;
}

export function keyOfPlace(place: Place): PlaceKey {
  return typeof place === 'string' ? place : yardKey(place.yard);
}

export function isYard(key: PlaceKey): boolean {
  return key.startsWith('y');
}

/** "the shed", a yard's code, a colony's label. */
export function calledPlace(key: PlaceKey, names: Names): string {
  if (key === 'sold') return 'sold or given away';
  if (key.startsWith('y')) return names.yard(Number(key.slice(1)) as YardId).code;
  if (key.startsWith('c')) return names.colony(Number(key.slice(1)) as ColonyId);
  return key;
}
