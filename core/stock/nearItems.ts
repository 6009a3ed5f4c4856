import { hiveParts } from '#shared/itemWords.ts';
import { itemName } from './itemName.ts';

/*
 * Items are known by what stands before the first comma of their name. One that is not known yet and reads almost like one
 * that is may be a slip of the finger: a letter or two in a word, the words in another order, or a part of a name
 * (`super`). Figures in a name are sizes and never slips.
 */

const mostShown = 3;

/** The item by which a name is known: `Deap boxes, to mend` is a `deap box`. */
export function headOf(typed: string): string {
  const head = (typed.split(',')[0] ?? '').replace(/^\s*(?:drawn|(?:8|10|eight|ten)[- ]frame)\s+(?=\S)/i, '');
  return itemName(head);
}

/** The same name with another head. */
export function withHead(typed: string, head: string): string {
  const [, ...rest] = typed.split(',');
  return [head, ...rest.map((part) => part.trim())].filter((part) => part !== '').join(', ');
}

/** Known items, by their heads, that a new one reads almost like, the nearest first; none where the item is known or like no other. */
export function nearItems(typed: string, known: ReadonlySet<string>): string[] {
  const head = headOf(typed);
  if (head === '' || known.has(head) || (hiveParts as readonly string[]).includes(head)) return [];
  const found = [...new Set([...hiveParts, ...known])].flatMap((item) => {
    const apart = farApart(head, item);
    return apart === null ? [] : [{ item, apart }];
  });
  // Parts of names are only shown where nothing is nearer.
  const best = found.filter(({ apart }) => apart < partOfName);
  return (best.length > 0 ? best : found).toSorted((a, b) => a.apart - b.apart).slice(0, mostShown).map(({ item }) => item);
}

const partOfName = 9;

/** How far apart two names are, or null where they are two things. */
function farApart(one: string, other: string): number | null {
  const [mine, yours] = [wordsOf(one), wordsOf(other)];
  const figures = (words: readonly string[]) => words.filter((word) => /\d/.test(word)).toSorted().join(' ');
  if (figures(mine) !== figures(yours)) return null;
  const joined = slips(mine.join(''), yours.join(''));
  if (joined === 0 || (joined === 1 && mine.join('').length >= 7)) return joined;
  if (mine.length === yours.length) {
    const apart = [wordsApart(mine, yours), wordsApart(mine.toSorted(), yours.toSorted())].filter((sum) => sum !== null);
    if (apart.length > 0) return Math.min(...apart) + 0.5;
  }
  const part = mine.length < yours.length && mine.every((word) => yours.includes(word)) && (hiveParts as readonly string[]).includes(other);
  return part ? partOfName : null;
}

function wordsOf(name: string): string[] {
  return name.split(/[\s-]+/).filter((word) => word !== '');
}

function wordsApart(mine: readonly string[], yours: readonly string[]): number | null {
  let sum = 0;
  for (const [at, word] of mine.entries()) {
    const apart = slips(word, yours[at] ?? '');
    if (apart > (word.length < 3 ? 0 : word.length < 6 ? 1 : 2)) return null;
    sum += apart;
  }
  return sum <= 2 ? sum : null;
}

/** Letters left out, put in, changed, or changed places with the next (optimal string alignment distance; Wagner and Fischer 1974, from memory). */
function slips(one: string, other: string): number {
  const rows: number[][] = [Array.from({ length: other.length + 1 }, (_, at) => at)];
  for (let i = 1; i <= one.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const cost = one[i - 1] === other[j - 1] ? 0 : 1;
      let least = Math.min((rows[i - 1]?.[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (rows[i - 1]?.[j - 1] ?? 0) + cost);
      if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) least = Math.min(least, (rows[i - 2]?.[j - 2] ?? 0) + 1);
      row.push(least);
    }
    rows.push(row);
  }
  return rows[one.length]?.[other.length] ?? 0;
}

/** “There is no item “deap box”. Nearest: deep box.” */
export function nearSentence(item: string, nearest: readonly string[]): string {
  return `There is no item “${item}”. Nearest: ${nearest.join(', ')}.`;
}
