import { causes, queenCells } from '#shared/entryForms.ts';
import type { ColumnKey } from './sheetColumns.ts';
import { words } from './words.ts';

/** How a cell is understood: nothing in it, a value, or text that cannot be read. */
export type Reading =
  | { readonly state: 'empty' }
  /** `value` is what is sent, in the exchange form; `question` is set when it is out of the ordinary. */
  | { readonly state: 'read'; readonly value: string; readonly question?: string }
  | { readonly state: 'refused'; readonly sentence: string };

const empty: Reading = { state: 'empty' };
const value = (text: string): Reading => ({ state: 'read', value: text });
const refused = (sentence: string): Reading => ({ state: 'refused', sentence });

/**
 * Borders of the ordinary: beyond them the sheet asks, it does not refuse (common practice, no source).
 * 20 frames of bees or stores fill two ten-frame boxes; a queen hardly fills 10 frames with brood at once;
 * mite washes take some 300 bees (half a cup).
 */
export const ordinary = { bees: 20, brood: 10, stores: 20, sampleLeast: 100, sampleMost: 600, mitesPer100: 20 } as const;

/** The longest text that one cell of an entry can hold. */
export const longestText = 4000;

/** Reads one cell as typed, short marks included. Never guesses: what could mean two things is refused with a sentence. */
export function readCell(key: ColumnKey, typed: string): Reading {
  const text = typed.trim();
  if (text === '') return empty;
  switch (key) {
    case 'bees':
    case 'brood':
    case 'stores':
      return readFrames(key, text);
    case 'eggs':
    case 'queen':
      return readYesNo(text);
    case 'cells':
      return readQueenCells(text);
    case 'temper':
      return readTemper(text);
    case 'mites':
      return /^\d{1,6}$/.test(text) ? value(String(Number(text))) : refused(words.refused.mites(text));
    case 'sample':
      return readSample(text);
    case 'lost':
      return readLost(text);
    case 'note':
      return text.length > longestText ? refused(words.refused.longNote(text.length)) : value(text);
  }
}

function readFrames(key: 'bees' | 'brood' | 'stores', text: string): Reading {
  const parts = /^(\d{0,4})(?:[.,](\d{0,2}))?$/.exec(text);
  if (!parts || !/\d/.test(text)) return refused(words.refused.frames(text));
  const frames = Number(`${parts[1] || '0'}.${parts[2] || '0'}`);
  const read = String(frames);
  return frames > ordinary[key] ? { state: 'read', value: read, question: words.question[key](read) } : value(read);
}

function readYesNo(text: string): Reading {
  const typed = text.toLowerCase();
  if ('yes'.startsWith(typed)) return value('yes');
  if ('no'.startsWith(typed)) return value('no');
  return refused(words.refused.yesNo(text));
}

function readQueenCells(text: string): Reading {
  const typed = text.toLowerCase();
  if (typed === '-' || typed === '–' || typed === '0') return value('none');
  // A lone "s" is the mark for swarm cells; supersedure needs its second letter.
  if (typed === 's') return value('swarm');
  const found = queenCells.filter((kind) => kind.startsWith(typed));
  return found.length === 1 && found[0] !== undefined ? value(found[0]) : refused(words.refused.cells(text));
}

function readTemper(text: string): Reading {
  return /^[1-5]$/.test(text) ? value(text) : refused(words.refused.temper(text));
}

function readSample(text: string): Reading {
  if (!/^\d{1,6}$/.test(text) || Number(text) === 0) return refused(words.refused.sample(text));
  const bees = Number(text);
  const strange = bees < ordinary.sampleLeast || bees > ordinary.sampleMost;
  return strange ? { state: 'read', value: String(bees), question: words.question.sample(String(bees)) } : value(String(bees));
}

function readLost(text: string): Reading {
  if (/^[xX]$/.test(text)) return value('unknown');
  const found: string[] = [];
  for (const part of text.split(';')) {
    const typed = part.trim().toLowerCase();
    if (typed === '') continue;
    const fits = causesThatFit(typed);
    const [cause] = fits;
    if (cause === undefined) return refused(words.refused.cause(part.trim()));
    if (fits.length > 1) return refused(words.refused.causeEither(part.trim(), fits));
    if (!found.includes(cause)) found.push(cause);
  }
  return found.length === 0 ? refused(words.refused.cause(text)) : value(found.join('; '));
}

/** By the first letters of the cause or of one of its words: "weak", "autumn", "vandal"; `x` among others is unknown. */
function causesThatFit(typed: string): string[] {
  if (typed === 'x') return ['unknown'];
  const starts = causes.filter((cause) => cause.startsWith(typed));
  if (starts.length > 0) return starts;
  return causes.filter((cause) => cause.split(' ').some((word) => word.length > 2 && word.startsWith(typed)));
}
