import type { Kind } from './entryForms.ts';
import { number } from './figures.ts';

/** The parts of a hive by their trade names, in the order in which they are named. */
export const hiveParts = ['deep box', 'deep frame', 'medium super', 'medium frame', 'shallow super', 'shallow frame', 'bottom board', 'entrance reducer', 'inner cover', 'outer cover', 'stand', 'feeder', 'queen excluder'] as const;

/** Kinds of entries whose items the account of the shed or the budget goes by. */
export const itemKinds = ['stock', 'purchase'] as const satisfies readonly Kind[];

export function namesItem(kind: string | null | undefined): boolean {
  return (itemKinds as readonly unknown[]).includes(kind);
}

/** "10 deep boxes", "1 deep box", "3 medium supers, 8-frame", "2 deep boxes with combs", "1,204 stands". */
export function countedItems(count: number, item: string): string {
  const text = number(count, 2);
  if (count === 1) return `${text} ${item}`;
  const [name = '', ...rest] = item.split(', ');
  return `${text} ${[name.split(' or ').map(many).join(' or '), ...rest].join(', ')}`;
}

/** What stands before "with", "of" or "for" is what there are several of. */
function many(name: string): string {
  const [, head = name, tail = ''] = /^(.+?)( (?:with|of|for) .+)?$/.exec(name) ?? [];
  const plural = /(x|ch|sh|ss)$/.test(head) ? `${head}es` : /[s)]$/.test(head) ? head : /[^aeiou]y$/.test(head) ? `${head.slice(0, -1)}ies` : `${head}s`;
  return `${plural}${tail}`;
}

/** Words that are no plural for all their s, and those that have no other form. */
const always = /(ss|us|is|lens|pliers|scissors|shears|secateurs|tongs|tweezers|gloves|goggles|overalls)$/i;

/** One of what was written as several: `deep boxes` is a `deep box`, `boxes of nails` a `box of nails`; the rest as written. */
export function oneItem(item: string): string {
  const [name = '', ...rest] = item.split(', ');
  return [name.split(' or ').map(one).join(' or '), ...rest].join(', ');
}

function one(name: string): string {
  const [, head = name, tail = ''] = /^(.+?)( (?:with|of|for) .+)?$/.exec(name) ?? [];
  const single = always.test(head) ? head : head.replace(/([^aeiou])ies$/, '$1y').replace(/(x|ch|sh|ss)es$/, '$1').replace(/([^s])s$/, '$1');
  return `${single}${tail}`;
}

/** Units by which goods are weighed, measured or charged, as they stand after a name: `wax, kg`. */
const measures = new Set(['lb', 'lbs', 'pound', 'kg', 'kilogram', 'g', 'gram', 'oz', 'ounce', 'ton', 'l', 'liter', 'litre', 'ml', 'gal', 'gallon', 'qt', 'quart', 'pint', 'ft', 'foot', 'feet', 'yd', 'yard', 'm', 'meter', 'metre', 'inch', 'h', 'hour', 'mile', 'km']);
/** Goods that come by weight or measure where their name ends so and says no size. */
const bulk = new Set([
  'sugar', 'syrup', 'fondant', 'candy', 'wax', 'beeswax', 'foundation', 'pollen', 'substitute', 'honey', 'propolis', 'jelly', 'paint', 'oil', 'glue', 'acid', 'thymol', 'amitraz', 'fuel', 'gasoline', 'petrol', 'diesel', 'propane', 'gas',
  'wire', 'rope', 'lumber', 'timber', 'wood', 'burlap', 'cloth', 'fabric', 'feed', 'seed', 'grease', 'water', 'gravel', 'sand', 'alcohol', 'salt', 'postage', 'electricity', 'labour', 'labor',
]);

/** Whether an item is weighed or measured, so that there may be a part of one; all else is counted whole. */
export function isMeasured(item: string): boolean {
  const parts = item.toLowerCase().split(',').map((part) => oneItem(part.trim())).filter((part) => part !== '');
  const [name = '', ...rest] = parts;
  if (rest.some((part) => measures.has(part)) || /^(?:in )?bulk$/.test(rest.at(-1) ?? '')) return true;
  // A size makes it a thing again: `white sugar, 50 lb bag`.
  if (rest.some((part) => /\d/.test(part) && !/^(?:19|20)\d\d$/.test(part))) return false;
  const head = /^(.+?)(?: (?:with|of|for|in) .+)?$/.exec(name)?.[1]?.split(/[\s-]+/).at(-1) ?? '';
  return bulk.has(head) || measures.has(head);
}

/** Rows that the program writes of a count or of a looked-over hive: house rules may give a hive half a stand, and the account must come out even. */
const reckoned = /^(?:counted \d|dead-out )/;

/** Why there cannot be so many of an item, or null: a box is a whole box. */
export function wholeTrouble(count: number, item: string, note = ''): string | null {
  if (Number.isInteger(count) || isMeasured(item) || reckoned.test(note)) return null;
  const [less, more] = [Math.floor(count), Math.ceil(count)];
  const part = (hiveParts as readonly string[]).includes(oneItem(item.split(',')[0] ?? '').trim().toLowerCase());
  const many = countedItems(2, oneItem(item)).slice(2);
  return `“${number(count, 6)}” is no whole number, and ${many} are counted whole. Write ${less === 0 ? '' : `${number(less)} or `}${number(more)}.${part ? '' : ` What is weighed or measured has its unit in its name: “${item.split(',')[0] ?? item}, lb”.`}`;
}
