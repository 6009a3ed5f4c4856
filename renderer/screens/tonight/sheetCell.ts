import { causes, fields, knownIngredients, newQueens, queenCells, queenPlaces } from '#shared/entryForms.ts';
import { ordinary, strangeWater } from '#shared/ordinary.ts';
import { meant } from '#shared/roundMarks.ts';
import { feedText, figure, readFeed, readSupers, readWeight, supersText, weightIn, weightText } from './sheetAmounts.ts';
import { acts, type ColumnKey } from './sheetColumns.ts';
import type { SheetSetting } from './sheetSetting.ts';
import { words } from './words.ts';

/** How a cell is understood: nothing in it, a value, or text that cannot be read. */
export type Reading =
  | { readonly state: 'empty' }
  /** `value` is what is sent, in the exchange form, or for cells of several parts what reads as the same again; `question` is set when it is out of the ordinary. */
  | { readonly state: 'read'; readonly value: string; readonly question?: string }
  | { readonly state: 'refused'; readonly sentence: string };

const empty: Reading = { state: 'empty' };
const value = (text: string): Reading => ({ state: 'read', value: text });
const refused = (sentence: string): Reading => ({ state: 'refused', sentence });
const askedAbout = (text: string, strange: boolean, question: string): Reading => (strange ? { state: 'read', value: text, question } : value(text));

/** The longest text that one cell of an entry can hold, and the longest label or name. */
export const longestText = 4000;
export const longestName = 80;

/** Reads one cell as typed, short marks included. Never guesses: what could mean two things is refused with a sentence. */
export function readCell(key: ColumnKey, typed: string, setting: SheetSetting): Reading {
  const text = typed.trim();
  if (text === '') return empty;
  switch (key) {
    case 'bees':
    case 'brood':
    case 'stores':
      return readFrames(key, text);
    case 'splitBees':
    case 'splitBrood':
    case 'splitStores':
      return readFrames(({ splitBees: 'bees', splitBrood: 'brood', splitStores: 'stores' } as const)[key], text);
    case 'eggs':
      return readAnswer(text, setting, false);
    case 'queen':
      return readAnswer(text, setting, true);
    case 'cells':
      return readQueenCells(text, setting);
    case 'temper':
      return /^[1-5]$/.test(text) ? value(text) : refused(words.refused.temper(text));
    case 'mites':
      return /^\d{1,6}$/.test(text) ? value(String(Number(text))) : refused(words.refused.mites(text));
    case 'sample':
      return readSample(text);
    case 'feed':
      return readFeedCell(text, setting);
    case 'supersOn':
    case 'supersOff':
      return readSupersCell(text, setting);
    case 'full':
    case 'empty':
    case 'weight':
      return readWeightCell(key, text, setting);
    case 'moisture':
      return readMoisture(text);
    case 'treat':
      return readTreatment(text, setting);
    case 'act':
      return readAct(text, setting);
    case 'queenYear':
      return /^\d{4}$/.test(text) ? value(text) : refused(words.refused.year(text));
    case 'oldQueen':
      return readChoice(text, queenPlaces);
    case 'newQueen':
      return readChoice(text, newQueens);
    case 'lot':
    case 'newLabel':
    case 'toYard':
    case 'queenSource':
    case 'supplier':
    case 'into':
      return text.length > longestName ? refused(words.refused.longName(text.length)) : value(text);
    case 'note':
      return text.length > longestText ? refused(words.refused.longNote(text.length)) : value(text);
  }
}

function readFrames(key: 'bees' | 'brood' | 'stores', text: string): Reading {
  const frames = /^\d{5}/.test(text) ? null : figure(text);
  if (frames === null) return refused(words.refused.frames(text));
  const read = String(frames);
  return askedAbout(read, frames > ordinary[key], words.question[key](read));
}

function readAnswer(text: string, { marks }: SheetSetting, queen: boolean): Reading {
  const fits = meant(text.toLowerCase(), queen ? (['yes', 'no', 'queen seen'] as const) : (['yes', 'no'] as const), marks);
  const [answer] = fits;
  if (answer === undefined || fits.length > 1) return refused(words.refused.yesNo(text, marks.yes, marks.no));
  return value(answer === 'no' ? 'no' : 'yes');
}

function readQueenCells(text: string, { marks }: SheetSetting): Reading {
  const typed = text.toLowerCase();
  if (typed === '–' || typed === '0') return value('none');
  const found = meant(typed, queenCells, marks);
  return found.length === 1 && found[0] !== undefined ? value(found[0]) : refused(words.refused.cells(text, marks));
}

function readSample(text: string): Reading {
  if (!/^\d{1,6}$/.test(text) || Number(text) === 0) return refused(words.refused.sample(text));
  const bees = Number(text);
  return askedAbout(String(bees), bees < ordinary.sampleLeast || bees > ordinary.sampleMost, words.question.sample(String(bees)));
}

function readFeedCell(text: string, setting: SheetSetting): Reading {
  const read = readFeed(text, setting);
  if (read === null) return refused(words.refused.feed(text, setting.marks));
  const { amount: figures } = read;
  const most = figures?.unit === 'l' ? ordinary.litres : figures?.unit === 'gal' ? ordinary.gallons : figures?.unit === 'kg' ? ordinary.feedPounds / 2.2 : ordinary.feedPounds;
  const out = feedText(read);
  return askedAbout(out, figures !== null && figures.amount > most, words.question.feed(out));
}

function readSupersCell(text: string, setting: SheetSetting): Reading {
  const read = readSupers(text, setting);
  if (read === null) return refused(words.refused.supers(text, setting.marks));
  const out = supersText(read);
  return askedAbout(out, read.reduce((sum, { count }) => sum + count, 0) > ordinary.supers, words.question.supers(out));
}

function readWeightCell(key: 'full' | 'empty' | 'weight', text: string, setting: SheetSetting): Reading {
  const read = readWeight(text, setting);
  if (read === null) return refused(words.refused.weight(text));
  const out = weightText(read, setting);
  return askedAbout(out, weightIn(read, 'lb') > (key === 'weight' ? ordinary.storesPounds : ordinary.fullPounds), words.question.weight(`${read.amount} ${read.unit}`));
}

function readMoisture(text: string): Reading {
  const water = figure(text.replace(/\s*%$/, ''));
  if (water === null || fields.moisture.type !== 'number') return refused(words.refused.moisture(text));
  const { min, max, over } = fields.moisture;
  if (water < min || water > max) return refused(words.refused.water(text, min, max, over));
  const strange = strangeWater(water);
  return askedAbout(String(water), strange !== null, words.question.moisture(strange ?? ''));
}

/** The mark for yes is the sheet's own ingredient; else the first letters of a known one, or any other written out. */
function readTreatment(text: string, { marks }: SheetSetting): Reading {
  const typed = text.toLowerCase();
  if (typed === marks.yes || typed === 'yes') return value('yes');
  const fits = meant(typed, knownIngredients, {});
  if (fits.length === 1 && fits[0] !== undefined) return value(fits[0]);
  if (fits.length > 1) return refused(words.refused.either(text, fits));
  return text.length < 4 ? refused(words.refused.ingredient(text, marks.yes)) : text.length > longestName ? refused(words.refused.longName(text.length)) : value(text);
}

function readAct(text: string, setting: SheetSetting): Reading {
  const whole = text.toLowerCase();
  const found: string[] = [];
  for (const part of text.split(';')) {
    const typed = part.trim().toLowerCase();
    if (typed === '') continue;
    const fits = actsThatFit(typed, setting);
    const [one] = fits;
    if (one === undefined) return refused(words.refused.act(part.trim(), setting.marks));
    if (fits.length > 1) return refused(words.refused.either(part.trim(), fits));
    if (isAct(one) && whole !== typed) return refused(words.refused.actAlone(one));
    if (!found.includes(one)) found.push(one);
  }
  return found.length === 0 ? refused(words.refused.act(text, setting.marks)) : value(found.join('; '));
}

function isAct(text: string): boolean {
  return (acts as readonly string[]).includes(text);
}

/** By its mark, or by the first letters of an act, a cause or one of a cause's words: "weak", "autumn", "vandal". */
function actsThatFit(typed: string, { marks }: SheetSetting): readonly string[] {
  if (typed === marks.lost) return ['unknown'];
  const starts = meant<string>(typed, [...causes, ...acts], marks);
  if (starts.length > 0) return starts;
  return causes.filter((cause) => cause.split(' ').some((word) => word.length > 2 && word.startsWith(typed)));
}

function readChoice(text: string, of: readonly string[]): Reading {
  const fits = meant(text.toLowerCase(), of, {});
  return fits.length === 1 && fits[0] !== undefined ? value(fits[0]) : refused(words.refused.choice(text, of));
}
