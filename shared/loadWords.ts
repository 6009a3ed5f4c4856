import { counted, number } from './figures.ts';
import { countedItems, oneItem } from './itemWords.ts';

/** A thing to take along, and how many of it; what is measured is written with its measure, as `gal of heavy syrup (2:1)`. */
export interface Load {
  readonly item: string;
  readonly count: number;
}

/** One of each serves every yard of a trip. */
export const tools = { washKit: 'mite wash kit', escape: 'bee escape or blower', stripBag: 'bag with a seal for what is taken off' } as const;
const toolNames: ReadonlySet<string> = new Set(Object.values(tools));

const treatmentOf = 'mite treatment, ';
const notChosen = 'its ingredient chosen on the page of mites';
const measured = /^(gal|l|lb|kg) /;

/** What is loaded where a colony is to be treated. Which ingredient is the person’s choice, how much the label’s. */
export function treatmentItem(ingredients: readonly string[]): string {
  return `${treatmentOf}${ingredients.length === 0 ? notChosen : `by the record fits ${ingredients.join(' or ')}`}`;
}

/** In the order in which a truck is loaded: boxes, feed, queens and bees, treatments, other things, tools. */
const order: readonly ((item: string) => boolean)[] = [
  (item) => !toolNames.has(item) && !item.startsWith(treatmentOf) && /\b(box|super|frame|comb|hive|excluder|board|cover)(e?s)?\b/i.test(item),
  (item) => /\b(syrup|fondant|feeders?|pollen)\b/i.test(item),
  (item) => /\b(queens?|packages?|nucs?|colony|colonies|bees)\b/i.test(item) && !toolNames.has(item) && !item.startsWith(treatmentOf),
  (item) => item.startsWith(treatmentOf),
  (item) => !toolNames.has(item),
];

/** The lines of a load list. What several tasks name in one and several is added up. */
export function loadLines(load: readonly Load[]): string[] {
  const found = new Map<string, number>();
  for (const { item, count } of load) {
    const one = oneItem(item);
    found.set(one, (found.get(one) ?? 0) + count);
  }
  const placeOf = (item: string) => {
    const place = order.findIndex((is) => is(item));
    return place < 0 ? order.length : place;
  };
  return [...found].map(([item, count]) => ({ item, count, place: placeOf(item) })).toSorted((a, b) => a.place - b.place).map(lineOf);
}

function lineOf({ item, count }: Load): string {
  if (toolNames.has(item)) return item;
  if (item.startsWith(treatmentOf)) return `mite treatment for ${counted(count, 'colony', 'colonies')}: ${item.slice(treatmentOf.length)}`;
  return measured.test(item) ? `${number(count, 2)} ${item}` : countedItems(count, item);
}
