import { number } from './figures.ts';

/** The parts of a hive by their trade names, in the order in which they are named. */
export const hiveParts = ['deep box', 'deep frame', 'medium super', 'medium frame', 'shallow super', 'shallow frame', 'bottom board', 'entrance reducer', 'inner cover', 'outer cover', 'stand', 'feeder', 'queen excluder'] as const;

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
