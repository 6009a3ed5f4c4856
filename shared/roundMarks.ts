import { boxes, causes, feeds, knownIngredients, queenCells, type amountUnits } from './entryForms.ts';

/** What a short mark can stand for on a round sheet. */
export const markMeanings = [
  'yes', 'no', 'queen seen', 'none', 'swarm', 'supersedure', 'emergency', 'lost', 'split', 'requeened', 'combined', 'syrup 1:1', 'syrup 2:1', 'fondant',
  'pollen substitute', 'deep', 'medium', 'shallow',
] as const;
export type MarkMeaning = (typeof markMeanings)[number];
export type Marks = Readonly<Record<MarkMeaning, string>>;

export const standardMarks: Marks = {
  yes: 'y', no: 'n', 'queen seen': 'q', none: '-', swarm: 's', supersedure: 'su', emergency: 'e', lost: 'x', split: 'sp', requeened: 'rq', combined: 'cb',
  'syrup 1:1': '1:1', 'syrup 2:1': '2:1', fondant: 'f', 'pollen substitute': 'p', deep: 'd', medium: 'm', shallow: 's',
};

interface Place {
  readonly name: string;
  readonly meanings: readonly MarkMeaning[];
  /** Words that are typed there and are no marks. */
  readonly words: readonly string[];
}

const units: readonly (typeof amountUnits)[number][] = ['gal', 'l', 'lb', 'kg'];

/** Which marks are typed in the same cells: there no two may be alike. */
const places: readonly Place[] = [
  { name: 'Eggs and queen seen', meanings: ['yes', 'no', 'queen seen'], words: [] },
  { name: 'Queen cells', meanings: ['none', 'swarm', 'supersedure', 'emergency'], words: queenCells },
  { name: 'Lost or act', meanings: ['lost', 'split', 'requeened', 'combined'], words: causes },
  { name: 'Feed', meanings: ['yes', 'syrup 1:1', 'syrup 2:1', 'fondant', 'pollen substitute'], words: [...feeds, ...units] },
  { name: 'Treated with', meanings: ['yes'], words: knownIngredients },
  { name: 'Supers', meanings: ['deep', 'medium', 'shallow'], words: boxes },
];

const longest = 8;

/** The person's marks over the standard ones; whatever is no mark is passed over. */
export function marksFrom(changed: Readonly<Partial<Record<string, string>>>): Marks {
  return Object.fromEntries(markMeanings.map((meaning) => [meaning, changed[meaning] ?? standardMarks[meaning]])) as Marks;
}

/** Why these marks cannot be used together, and which of them is wrong; null when they can. */
export function markTrouble(marks: Marks): { readonly meaning: MarkMeaning; readonly sentence: string } | null {
  for (const meaning of markMeanings) {
    const mark = marks[meaning];
    const trouble = (sentence: string) => ({ meaning, sentence });
    if (mark === '' || mark.trim() !== mark || mark !== mark.toLowerCase() || mark.length > longest) return trouble(`A mark for “${meaning}” is 1 to ${longest} small letters or signs.`);
    if (/[\s;="+]/.test(mark)) return trouble(`“${mark}” has a sign that means something else in a cell. Use letters.`);
    if (mark !== standardMarks[meaning] && /^[\d.,]/.test(mark)) return trouble(`“${mark}” looks like a number. Begin the mark with a letter.`);
  }
  for (const { name, meanings, words } of places) {
    for (const [at, meaning] of meanings.entries()) {
      const mark = marks[meaning];
      const other = meanings.slice(0, at).find((one) => marks[one] === mark);
      if (other !== undefined) return { meaning, sentence: `Under ${name}, “${mark}” would mean both ${other} and ${meaning}. Give one of them another mark.` };
      const word = [...meanings, ...words].find((one) => one === mark && one !== meaning);
      if (word !== undefined) return { meaning, sentence: `Under ${name}, “${mark}” is the word for something else. Give ${meaning} another mark.` };
    }
  }
  return null;
}

/** What was typed means, of so many: the mark itself first, else the first letters of a word. Several: it is not clear which. */
export function meant<Word extends string>(typed: string, words: readonly Word[], marks: Readonly<Partial<Record<Word, string>>>): readonly Word[] {
  const marked = words.filter((word) => marks[word] === typed);
  if (marked.length > 0) return marked;
  const same = words.filter((word) => word === typed);
  return same.length > 0 ? same : words.filter((word) => word.startsWith(typed));
}
