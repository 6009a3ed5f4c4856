import type { Grams, Millilitres } from '#shared/brands.ts';
import type { StoresColony, StoresList, StoresTotals } from '#shared/contract/stores.ts';
import { massIn, volumeIn, type MassUnit } from '#shared/units.ts';
import { csvText } from '../../parts/csv.ts';
import { hold } from '#shared/figures.ts';
import { missing, number } from '../../parts/format.ts';
import { words } from './words.ts';

/** A mass without its unit, to a tenth; an en dash where it is not known. */
export function massFigure(grams: number | null, unit: MassUnit, places = 1): string {
  return grams === null ? missing : number(massIn(grams as Grams, unit), places);
}

export function massText(grams: number, unit: MassUnit, places = 1): string {
  return `${massFigure(grams, unit, places)}${hold}${unit}`;
}

export function volumeUnit(unit: MassUnit): 'gal' | 'l' {
  return unit === 'kg' ? 'l' : 'gal';
}

export function volumeText(volume: number, unit: MassUnit): string {
  return `${number(volumeIn(volume as Millilitres, volumeUnit(unit)), 1)}${hold}${volumeUnit(unit)}`;
}

/** What is to be done about a colony's stores, in a few words. */
export function todoText({ say, amount, feed, wentShort }: StoresColony, unit: MassUnit): string {
  switch (say) {
    case 'take':
      return words.say.take(massText(amount, unit));
    case 'feed':
      return feed === null ? words.say.fondant : words.say.feed(volumeText(feed.volume, unit), words.mix[feed.mix]);
    case 'leave':
      return wentShort === null ? words.say.leave : words.say.wentShort(massText(wentShort, unit));
    case 'look first':
    case 'not told':
      return words.say[say];
  }
}

/** Syrup of both mixes: `12 gal of 2:1`; an en dash where none is to be given. */
export function syrupText({ heavy, light }: StoresTotals, unit: MassUnit): string {
  const parts = ([[heavy, 'heavy'], [light, 'light']] as const).flatMap(([volume, mix]) => (volume === 0 ? [] : [`${volumeText(volume, unit)} of ${words.mix[mix]}`]));
  return parts.length === 0 ? missing : parts.join(', ');
}

export function wantsSomething({ say, supers, wentShort }: StoresColony): boolean {
  return say !== 'leave' || wentShort !== null || supers !== null;
}

/** A line for every colony, figures in the book's own units. */
export function storesCsv(list: StoresList, unit: MassUnit): string {
  const figure = (grams: number | null) => (grams === null ? null : Math.round(massIn(grams as Grams, unit) * 10) / 10);
  const volume = volumeUnit(unit);
  const rows = list.yards.flatMap(({ code, colonies }) =>
    colonies.map((colony) => [
      code, colony.label, colony.told?.day ?? null, colony.told?.from ?? null, figure(colony.told?.grams ?? null), colony.told?.age ?? null, figure(colony.told === null ? null : colony.fed.grams), colony.told === null ? null : colony.fed.notReckoned,
      figure(colony.reckoned), figure(colony.target), colony.say, figure(colony.say === 'feed' ? colony.amount : null), figure(colony.say === 'take' ? colony.amount : null), figure(colony.wentShort), colony.feed === null ? null : words.mix[colony.feed.mix],
      colony.feed === null ? null : volumeIn(colony.feed.volume as Millilitres, volume), figure(colony.feed?.sugar ?? null), colony.supers?.count ?? null, colony.supers?.say ?? null, colony.reason,
    ]));
  return csvText([
    'yard', 'colony', 'told_on', 'told_by', `told_${unit}`, 'days_ago', `syrup_since_${unit}`, 'feedings_not_reckoned', `there_${unit}`, `wanted_${unit}`, 'say', `short_${unit}`, `to_take_${unit}`, `was_short_${unit}`, 'mix', `syrup_${volume}`, `sugar_${unit}`, 'supers_on', 'supers', 'reason',
  ], rows);
}
