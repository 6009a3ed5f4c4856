import type { CostLine } from '#shared/contract/budgetLines.ts';
import { knownIngredients } from '#shared/entryForms.ts';
import { boxItems, frameItems, readItem } from '#core/stock/itemName.ts';

/** Lines of an enterprise budget that returns stand under (the shape that extension budgets have, from memory). */
export const returnLines = ['honey', 'bees sold', 'pollination', 'other returns'] as const;
export type ReturnLine = (typeof returnLines)[number];

const hiveParts = new Set<string>([...boxItems, ...frameItems, 'bottom board', 'entrance reducer', 'inner cover', 'outer cover', 'feeder', 'queen excluder', 'stand']);

/** Bees are what an item's name ends in before its first comma: a 5-frame nuc is bees, a nuc box is not. */
const bees = /\b(bees|packages?|nucs?|nucleus|nuclei|queens?|queen cells?|colony|colonies|swarms?)$/;

/** The first of these whose words a purchase names; feeders and honey jars are asked for before feed and honey. */
const bought: readonly { readonly line: CostLine; readonly words: RegExp }[] = [
  { line: 'containers', words: /\b(jars?|bottles?|lids?|labels?|pails?|buckets?|tubs?|containers?|drums?|boxes for jars)\b/ },
  { line: 'equipment', words: /\b(feeders?|hives?|box(es)?|frames?|foundation|supers?|excluders?|boards?|covers?|stands?|extractor|smokers?|veils?|suits?|gloves|tools?|paint|cages?|scales?|tanks?|straps?|fence|pallets?|guards?)\b/ },
  { line: 'treatments', words: new RegExp(`\\b(${knownIngredients.join('|')}|tau-fluvalinate|coumaphos|hop beta|treatments?|acid|vapori[sz]er|mite)\\b`) },
  { line: 'feed', words: /\b(sugar|syrup|fondant|pollen|patty|patties|candy|feed)\b/ },
  { line: 'fuel', words: /\b(fuel|gas|gasoline|petrol|diesel)\b/ },
];

/** The line of the budget a purchase belongs under, by the words of its item; what none names is other. */
export function categoryOfPurchase(item: string): CostLine {
  const name = item.toLowerCase();
  if (bees.test(headOf(name))) return 'bees';
  if (hiveParts.has(readItem(item).item)) return 'equipment';
  return bought.find(({ words }) => words.test(name))?.line ?? 'other costs';
}

/** The line a sale belongs under: a colony is bees; goods by the words of their item. */
export function categoryOfSale(item: string | undefined, ofColony: boolean): ReturnLine {
  if (ofColony || item === undefined) return ofColony ? 'bees sold' : 'other returns';
  const name = item.toLowerCase();
  if (/\bpollination\b/.test(name)) return 'pollination';
  if (bees.test(headOf(name))) return 'bees sold';
  if (/\b(wax|candles?|propolis|pollen|hives?|box(es)?|frames?)\b/.test(name)) return 'other returns';
  return /\b(honey|comb)\b/.test(name) ? 'honey' : 'other returns';
}

function headOf(name: string): string {
  return (name.split(',')[0] ?? '').trim();
}
