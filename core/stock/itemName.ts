/*
 * The exchange form has one column for an item, so what matters about a piece is said in its trade name, with commas:
 * `medium super, 8-frame`, `deep frame, drawn, 2022`, `deep box, to mend`. Only the parts of a hive are read so; of
 * anything else (`honey jar, 1 lb`) nothing but the state is taken apart.
 */

export const pieceStates = ['sound', 'to mend', 'worn out'] as const;
export type PieceState = (typeof pieceStates)[number];
export type Comb = 'drawn' | 'foundation';

export interface StockItem {
  /** The trade name in its one spelling, box depth included: `deep box`, `medium frame`. */
  readonly item: string;
  /** Frames that a box holds, or that a floor or lid is made for; null where it was not said. */
  readonly frames: 8 | 10 | null;
  readonly comb: Comb | null;
  /** The year the comb was built. */
  readonly year: number | null;
  readonly state: PieceState | null;
  /** What else was said, as typed. */
  readonly more: readonly string[];
}

export const boxItems = ['deep box', 'medium super', 'shallow super'] as const;
export const frameItems = ['deep frame', 'medium frame', 'shallow frame'] as const;
/** Of one kind for hives of eight and of ten frames each. */
const sized = ['bottom board', 'entrance reducer', 'inner cover', 'outer cover', 'feeder', 'queen excluder'];
const hiveParts = new Set<string>([...boxItems, ...frameItems, ...sized, 'stand']);

export function isFrame(item: string): boolean {
  return (frameItems as readonly string[]).includes(item);
}

/** Whether a part fits only hives of eight or only hives of ten frames; frames and stands fit both. */
export function isSized(item: string): boolean {
  return hiveParts.has(item) && !isFrame(item) && item !== 'stand';
}

const stateWords: Readonly<Record<string, PieceState>> = {
  sound: 'sound', 'to mend': 'to mend', 'to be mended': 'to mend', 'needs mending': 'to mend', 'in repair': 'to mend', 'worn out': 'worn out', worn: 'worn out',
};
const combWords: Readonly<Record<string, Comb>> = {
  drawn: 'drawn', 'drawn comb': 'drawn', foundation: 'foundation', 'on foundation': 'foundation', 'with foundation': 'foundation', undrawn: 'foundation',
};

/** Takes a typed name apart. What is not understood stays in `more`, or in the name where it is no part of a hive. */
export function readItem(typed: string): StockItem {
  const [head = '', ...rest] = typed.split(',').map((part) => part.trim().replace(/\s+/g, ' ')).filter((part) => part !== '');
  const found: { frames: 8 | 10 | null; comb: Comb | null; year: number | null; state: PieceState | null } = { frames: null, comb: null, year: null, state: null };
  let name = head;
  // "drawn deep frames", "8-frame deep box": said before the name as well.
  const leading = /^(drawn|(8|10|eight|ten)[- ]frame) (.+)$/i.exec(head);
  if (leading !== null && hiveParts.has(itemName(leading[3] ?? ''))) {
    name = leading[3] ?? '';
    if (leading[2] === undefined) found.comb = 'drawn';
    else found.frames = framesOf(leading[2]);
  }
  const item = itemName(name);
  const part = hiveParts.has(item);
  if (!part) {
    // The state is the last word of all, so that what stands before it is a name however it reads.
    const last = rest.at(-1)?.toLowerCase() ?? '';
    const state = Object.hasOwn(stateWords, last) ? (stateWords[last] ?? null) : null;
    return { item: [item, ...(state === null ? rest : rest.slice(0, -1))].join(', '), ...found, state, more: [] };
  }
  const more: string[] = [];
  for (const said of rest) {
    const word = said.toLowerCase();
    const frames = /^(8|10|eight|ten)[- ]frames?$/.exec(word)?.[1];
    const year = /^(?:of |from )?((?:19|20)\d\d)$/.exec(word)?.[1];
    if (Object.hasOwn(stateWords, word) && found.state === null) found.state = stateWords[word] ?? null;
    else if (frames !== undefined && found.frames === null && isSized(item)) found.frames = framesOf(frames);
    else if (Object.hasOwn(combWords, word) && found.comb === null && isFrame(item)) found.comb = combWords[word] ?? null;
    else if (year !== undefined && found.year === null && isFrame(item)) found.year = Number(year);
    else more.push(said);
  }
  return { item, ...found, more };
}

/** The name that says all that; reading it gives the same again. */
export function writeItem({ item, frames, comb, year, state, more }: StockItem): string {
  return [item, frames === null ? null : `${frames}-frame`, comb, year === null ? null : String(year), state, ...more].filter((part) => part !== null).join(', ');
}

function framesOf(word: string): 8 | 10 {
  return word === '8' || word.toLowerCase() === 'eight' ? 8 : 10;
}

/** What is counted as one item: the name, and the size where it is not the house's usual one. */
export function countedAs({ item, frames }: Pick<StockItem, 'item' | 'frames'>, usual: 8 | 10): string {
  return frames === null || frames === usual ? item : `${item}, ${frames}-frame`;
}

/** The item without its size. */
export function itemOf(counted: string): string {
  return counted.replace(/, (8|10)-frame$/, '');
}

/** What the trade also calls the parts of a hive. */
const otherNames: Readonly<Record<string, string>> = {
  deep: 'deep box', 'deep super': 'deep box', 'deep hive body': 'deep box', medium: 'medium super', 'medium box': 'medium super', bottom: 'bottom board',
  reducer: 'entrance reducer', excluder: 'queen excluder', 'hive stand': 'stand', 'telescoping cover': 'outer cover',
};

/** One spelling of an item: lower case, single spaces, the singular that people also write in the plural, one name for a part. */
export function itemName(typed: string): string {
  const name = typed.trim().toLowerCase().replace(/\s+/g, ' ').replace(/(x|ch|sh|ss)es$/, '$1').replace(/(?<!s)s$/, '');
  return Object.hasOwn(otherNames, name) ? (otherNames[name] ?? name) : name;
}
