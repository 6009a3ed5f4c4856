import type { MappedColumn, SheetMapping } from '#shared/contract/sheets.ts';
import { columns, entryForms, fields, kinds, type Column, type Kind } from '#shared/entryForms.ts';
import { dataOf, findings, isQuantity } from './findings.ts';
import { isDayLike, readDay } from './readDays.ts';
import { isNumberLike, splitUnit, unitInHeader, unitNamed } from './readNumbers.ts';
import type { Sheet, SheetCell } from './sheet.ts';
import { formValue, headerWords, kindNamed, kindWords, noWords, plainWords, yesWords } from './synonyms.ts';

const looked = 400;
/** Of the cells looked at, how many must fit what a column holds. */
const enough = 0.6;

/**
 * What the headers and cells of a sheet most likely mean. Nothing is guessed that the words and the data do not bear
 * out: a column that fits nothing stays undecided, and so do the kind, the order of days and the decimal sign.
 * @param hints names that may tell the kind: the sheet's, the file's
 * @param said the kind, where a person has said it
 */
export function guessMapping(sheet: Sheet, hints: readonly string[], said: Kind | null = null): SheetMapping {
  const cells = sheet.headers.map((_, at) => dataOf(sheet, at, looked));
  const scores = sheet.headers.map((header, at) => scoresOf(header, cells[at] ?? []));
  const kindColumn = said === null ? kindColumnOf(scores, cells) : null;
  const kind = said ?? (kindColumn === null ? guessKind(sheet, scores, cells, hints) : null);
  const allowed = new Set<Column>(kind === null ? columns : ['date', 'note', ...entryForms[kind].must, ...entryForms[kind].may]);
  allowed.delete('entry');
  // Without a kind a wrong guess would look as sure as a right one.
  if (kind === null && kindColumn === null) for (const column of columns) if (!['date', 'yard', 'colony', 'note'].includes(column)) allowed.delete(column);
  const given = assign(scores, allowed, kindColumn);
  const mapped: MappedColumn[] = sheet.headers.map((header, at) => {
    const becomes = at === kindColumn ? 'entry' : (given.get(at) ?? null);
    return { header, becomes, unit: becomes !== null && isQuantity(becomes) ? unitOf(header, cells[at] ?? []) : null };
  });
  const bare: SheetMapping = { kind, columns: mapped, fixed: fixedOf(kind, mapped), dateOrder: null, decimal: null };
  const found = findings(sheet, bare);
  return {
    ...bare,
    dateOrder: found.days === 'month-first' || found.days === 'day-first' ? found.days : null,
    decimal: found.decimal === 'point' || found.decimal === 'comma' ? found.decimal : null,
  };
}

const inFrames = /\b(frames?|seams?|waben|wabengassen|cadres?)\b/;

type Scores = ReadonlyMap<Column, number>;

function scoresOf(header: string, cells: readonly SheetCell[]): Scores {
  const words = plainWords(header.replace(/\(\d+\)$/, '')).split(' ').filter((word) => unitNamed(word) === null).join(' ');
  const scores = new Map<Column, number>();
  for (const column of columns) {
    // Frames of bees are not the bees of a sample, though both heads have the word.
    if (column === 'bees' && inFrames.test(words)) continue;
    let best = 0;
    for (const phrase of [plainWords(column), ...headerWords[column]]) {
      const score = words === phrase ? 10 + phrase.length / 100 : ` ${words} `.includes(` ${phrase} `) ? 4 + phrase.length / 100 : 0;
      best = Math.max(best, score);
    }
    if (best > 0 && fits(column, cells)) scores.set(column, best);
  }
  return scores;
}

function fits(column: Column, cells: readonly SheetCell[]): boolean {
  if (cells.length === 0) return true;
  return cells.filter((cell) => cellFits(column, cell)).length >= cells.length * enough;
}

function cellFits(column: Column, cell: SheetCell): boolean {
  const text = cell.text.trim();
  if (column === 'date' || column === 'end_date') return cell.type === 'day' || isDayLike(text) || readDay(cell, 'day-first') !== null;
  if (cell.type === 'day') return column === 'note';
  if (column === 'entry') return kindNamed(text) !== null;
  const field = fields[column];
  switch (field.type) {
    case 'number': {
      const { figure } = splitUnit(text);
      return isNumberLike(isQuantity(column) ? figure : text);
    }
    case 'money':
      return isNumberLike(text.replace(/[$€£]/g, ''));
    case 'year':
      return /^(19|20)\d{2}$/.test(text);
    case 'yes-no':
      return yesWords.has(text.toLowerCase()) || noWords.has(text.toLowerCase());
    case 'choice':
      return field.of.includes(formValue(column, text).toLowerCase());
    default:
      return true;
  }
}

/** A column called type, kind or the like that holds words for kinds. */
function kindColumnOf(scores: readonly Scores[], cells: readonly (readonly SheetCell[])[]): number | null {
  const at = scores.findIndex((one, index) => (one.get('entry') ?? 0) >= 10 && (cells[index]?.length ?? 0) > 0);
  return at < 0 ? null : at;
}

/** Each exchange column to the header that fits it best; a header gets one, a column is given once, but for notes. */
function assign(scores: readonly Scores[], allowed: ReadonlySet<Column>, taken: number | null): Map<number, Column> {
  const pairs = scores.flatMap((one, at) => (at === taken ? [] : [...one].filter(([column]) => allowed.has(column)).map(([column, score]) => ({ at, column, score }))));
  pairs.sort((a, b) => b.score - a.score || a.at - b.at || columns.indexOf(a.column) - columns.indexOf(b.column));
  const given = new Map<number, Column>();
  const used = new Set<Column>();
  for (const { at, column } of pairs) {
    if (given.has(at) || used.has(column)) continue;
    given.set(at, column);
    if (column !== 'note') used.add(column);
  }
  return given;
}

const common: ReadonlySet<Column> = new Set(['date', 'yard', 'colony', 'note', 'unit', 'price', 'quantity']);

function guessKind(sheet: Sheet, scores: readonly Scores[], cells: readonly (readonly SheetCell[])[], hints: readonly string[]): Kind | null {
  const says = (texts: readonly string[], kind: Kind) => texts.some((text) => [kind, ...kindWords[kind]].some((word) => ` ${plainWords(text)} `.includes(` ${word} `)));
  const ranked = kinds.map((kind) => {
    const form = entryForms[kind];
    const given = assign(scores, new Set<Column>(['date', 'note', ...form.must, ...form.may]), null);
    const got = new Set(given.values());
    let score = 0;
    for (const column of got) if (!common.has(column)) score += 2;
    // A unit may stand in a header, and honey weighed net has no empty weight.
    const implied = (column: Column) => (column === 'unit' && [...got].some(isQuantity)) || (column === 'tare' && got.has('gross'));
    score -= form.must.filter((column) => !got.has(column) && !implied(column)).length;
    score -= scores.filter((_, at) => !given.has(at) && (cells[at]?.length ?? 0) > 0).length * 0.5;
    if (says(hints, kind)) score += 3;
    if (says(sheet.headers, kind)) score += 1;
    return { kind, score };
  }).toSorted((a, b) => b.score - a.score);
  const [first, second] = ranked;
  if (first === undefined || second === undefined || first.score < 1.5 || first.score - second.score < 0.5) return null;
  return first.kind;
}

/** The unit the header names, or the one every figure carries. */
function unitOf(header: string, cells: readonly SheetCell[]): MappedColumn['unit'] {
  const named = unitInHeader(header);
  if (named !== null) return named;
  const units = new Set(cells.map((cell) => splitUnit(cell.text).unit));
  return units.size === 1 ? ([...units][0] ?? null) : null;
}

/** What follows from a header's own words: honey weighed net has no empty weight, and “per 300 bees” is the sample. */
function fixedOf(kind: Kind | null, mapped: readonly MappedColumn[]): SheetMapping['fixed'] {
  const fixed: SheetMapping['fixed'] = {};
  const gross = mapped.find((column) => column.becomes === 'gross');
  if (kind === 'harvest' && gross !== undefined && !mapped.some((column) => column.becomes === 'tare') && !/gross|full|brutto/i.test(gross.header)) fixed.tare = '0';
  const mites = mapped.find((column) => column.becomes === 'mites');
  const sample = /(?:per|\/|in)\s*(\d{2,4})(?:\s*bees)?/i.exec(mites?.header ?? '')?.[1];
  if (kind === 'mites' && sample !== undefined && !mapped.some((column) => column.becomes === 'bees')) fixed.bees = sample;
  return fixed;
}

