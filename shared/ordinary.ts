import { fields, type Cells, type Column } from './entryForms.ts';
import { hold, number } from './figures.ts';
import { gramsPerPound } from './units.ts';

/**
 * Borders of the ordinary: beyond them a form asks, it does not refuse (common practice, no source).
 * 20 frames of bees or stores fill two ten-frame boxes; a queen hardly fills 10 frames with brood at once;
 * mite washes take some 300 bees (half a cup). Ripe honey has some 15 to 19 % water.
 */
export const ordinary = {
  bees: 20, brood: 10, stores: 20, sampleLeast: 100, sampleMost: 600, mitesPer100: 20, supers: 5, gallons: 5, litres: 20, feedPounds: 50, storesPounds: 150,
  fullPounds: 300, yardPounds: 10_000, moistureLeast: 14, moistureMost: 20, hours: 16, people: 12, miles: 300, quantity: 5000, price: 20_000,
} as const;

/** Standards for water in honey: Codex CXS 12-1981, 3.4, 20 % and heather (Calluna) 23 % (from memory); EU Directive 2001/110/EC, annex II, the same two. */
export const waterStandard = { honey: 20, heather: 23 } as const;

/** What is said of a share of water in honey that is out of the ordinary, or null. Per cent. */
export function strangeWater(water: number): string | null {
  if (water > waterStandard.heather) return `${number(water, 2)}${hold}% water is far above the standard: ${waterStandard.honey}${hold}% by the Codex, ${waterStandard.heather}${hold}% for heather honey. It is likely to ferment.`;
  if (water > waterStandard.honey) return `${number(water, 2)}${hold}% water is above the standard: ${waterStandard.honey}${hold}% by the Codex; heather honey may have ${waterStandard.heather}${hold}%.`;
  return water < ordinary.moistureLeast ? `${number(water, 2)}${hold}% water is very dry for honey.` : null;
}

export interface Strange {
  readonly column: Column;
  readonly sentence: string;
}

const pounds = (amount: number, unit: string | undefined) => (unit === 'kg' ? (amount * 1000) / gramsPerPound : amount);

/** What is possible in a row of the exchange form and out of the ordinary, each with a sentence. Cells that are no plain numbers are left to the desk. */
export function strangeIn(row: Cells): Strange[] {
  const found: Strange[] = [];
  const figure = (column: Exclude<Column, 'date' | 'entry'>): number | null => {
    const [text, field] = [row[column]?.trim() ?? '', fields[column]];
    if (!/^\d*\.?\d+$/.test(text)) return null;
    // What is impossible is refused, so it is not asked about before.
    return field.type === 'number' && (Number(text) < field.min || Number(text) > field.max) ? null : Number(text);
  };
  // The sentence is only made where it is said: a file may have a million rows.
  const ask = (column: Column, strange: boolean, says: () => string) => {
    if (strange) found.push({ column, sentence: says() });
  };
  const above = (column: Exclude<Column, 'date' | 'entry'>, most: number, says: (value: string) => string) => {
    const value = figure(column);
    if (value !== null) ask(column, value > most, () => says(number(value, 2)));
  };
  above('frames_bees', ordinary.bees, (frames) => `${frames} frames of bees is more than two ten-frame boxes hold.`);
  above('frames_brood', ordinary.brood, (frames) => `${frames} frames of brood is more than a ten-frame box holds.`);
  above('frames_stores', ordinary.stores, (frames) => `${frames} frames of stores is more than two ten-frame boxes hold.`);
  const [mites, bees] = [figure('mites'), figure('bees')];
  if (bees !== null) ask('bees', bees < ordinary.sampleLeast || bees > ordinary.sampleMost, () => `${number(bees)} bees is an unusual sample; half a cup is about 300.`);
  if (mites !== null && bees !== null) ask('mites', mites * 100 > ordinary.mitesPer100 * bees && mites <= bees, () => `${number(mites)} mites in ${number(bees)} bees is a very high count.`);
  above('count', ordinary.supers, (count) => `${count} boxes are a lot at once.`);
  const amount = figure('amount');
  if (amount !== null) {
    const most = row.unit === 'l' ? ordinary.litres : row.unit === 'gal' ? ordinary.gallons : ordinary.feedPounds;
    ask('amount', (row.unit === 'kg' ? pounds(amount, 'kg') : amount) > most, () => `${number(amount, 2)} ${row.unit ?? ''} is a lot of feed for one colony.`);
    ask('amount', amount === 0, () => 'Nothing is no feed.');
  }
  const weight = figure('weight');
  if (weight !== null) ask('weight', pounds(weight, row.unit) > ordinary.storesPounds, () => `${number(weight, 1)} ${row.unit ?? ''} is an unusual weight of stores for one colony.`);
  const gross = figure('gross');
  if (gross !== null) {
    const most = (row.colony ?? '').trim() === '' ? ordinary.yardPounds : ordinary.fullPounds;
    ask('gross', pounds(gross, row.unit) > most, () => `${number(gross, 1)} ${row.unit ?? ''} is an unusual weight for ${most === ordinary.yardPounds ? 'one yard' : 'one colony'}.`);
    ask('gross', gross === 0, () => 'A full weight of 0 is no honey.');
  }
  const water = figure('moisture');
  const wet = water === null ? null : strangeWater(water);
  if (wet !== null) ask('moisture', true, () => wet);
  above('hours', ordinary.hours, (hours) => `${hours} hours is a long day.`);
  above('people', ordinary.people, (people) => `${people} people is a crowd for one yard.`);
  above('miles', ordinary.miles, (miles) => `${miles} miles is a long way.`);
  above('price', ordinary.price, (price) => `${price} is a large sum.`);
  above('quantity', ordinary.quantity, (quantity) => `${quantity} is a large number.`);
  ask('quantity', figure('quantity') === 0 && !/^counted \d/.test(row.note ?? ''), () => 'A quantity of 0 is nothing at all.');
  const [day, year] = [/^(\d{4})-/.exec(row.date ?? '')?.[1], figure('queen_year')];
  if (day !== undefined && year !== null) ask('queen_year', Number(day) - year > 5 && Number(day) >= year, () => `A queen of ${year} would be ${Number(day) - year} years old; few live above 5.`);
  return found;
}
