import { dayFromTyped, dayInWords, daysBetween, yearOf, type DateOrder, type Day } from '#shared/days.ts';
import { amountUnits, causes, columns, entryForms, fields, fixedPlaces, kinds, type Cells, type Column, type FieldType, type Kind } from '#shared/entryForms.ts';
import { number as figureText } from '#shared/figures.ts';
import { wholeTrouble } from '#shared/itemWords.ts';
import { gramsFrom, millilitresFrom, minorFrom } from '#shared/units.ts';
import type { CellValue, RowTrouble, TypedRow } from './typedRow.ts';

type Reading = { ok: true; value: CellValue } | { ok: false; sentence: string };
export type RowReading = { ok: true; row: TypedRow } | { ok: false; trouble: RowTrouble };

const number = /^[+-]?(\d+\.?\d*|\.\d+)$/;
const longestCell = 4000;
/** Words that stand for a place of the shed account, or for all yards together. */
const reserved: ReadonlySet<string> = new Set([...fixedPlaces, 'all']);

/** A label stands in tables, on sheets and on the hive; longer ones are notes. */
const longestLabel = 80;
/** Whole units of money. */
const mostMoney = 10_000_000;
/** Queens live two to five years; this leaves room for any that is talked about (common practice, no source). */
const oldestQueen = 10;

/** A year that a record of today's keepers can speak of; anything else is a slip of the finger. */
function isLikelyYear(year: number): boolean {
  return year >= 1900 && year <= 2200;
}

/** Reads one row of the exchange form by itself; never guesses, and stops at the first cell that cannot be read. */
export function readRow(cells: Cells, order: DateOrder): RowReading {
  for (const column of columns) {
    const typed = cells[column];
    if (typed === undefined) continue;
    if (typed.length > longestCell) {
      return trouble(column, `${typed.slice(0, 40)}…`, `The cell holds ${typed.length} characters; at most ${longestCell} fit. Shorten it.`);
    }
    if (typed.includes('\u0000') || !typed.isWellFormed()) {
      return trouble(column, typed.replaceAll('\u0000', ' ').toWellFormed(), 'The cell holds a sign that is no letter and cannot be kept. Type it again.');
    }
    if (typed.trimStart().startsWith('=')) {
      return trouble(column, typed, 'The cell holds a spreadsheet formula. Write its result instead.');
    }
  }
  const dateText = (cells.date ?? '').trim();
  if (dateText === '') return trouble('date', '', 'The row has no date. Write the day as 2025-04-19.');
  const day = dayFromTyped(dateText, order);
  if (day === null) return trouble('date', dateText, `“${dateText}” is no day of the calendar. Write it as 2025-04-19.`);
  if (!isLikelyYear(yearOf(day))) return trouble('date', dateText, `The year of “${dateText}” is mistyped. Write the day as 2025-04-19.`);
  const kindText = (cells.entry ?? '').trim().toLowerCase();
  const kind = kinds.find((known) => known === kindText);
  if (kind === undefined) {
    return trouble('entry', cells.entry ?? '', kindText === ''
      ? `The row does not say what kind of entry it is. Use one of: ${kinds.join(', ')}.`
      : `“${cells.entry}” is not a kind of entry. Use one of: ${kinds.join(', ')}.`);
  }
  return readCells(cells, day, kind, order);
}

function readCells(cells: Cells, day: Day, kind: Kind, order: DateOrder): RowReading {
  const form = entryForms[kind];
  const values: Partial<Record<Column, CellValue>> = {};
  for (const column of columns) {
    if (column === 'date' || column === 'entry') continue;
    // One kind of line end, as in a file, so that an entry comes back from its export as the same.
    const typed = (cells[column] ?? '').trim().replace(/\r\n?/g, '\n');
    if (typed === '') continue;
    if (column !== 'note' && !form.must.includes(column) && !form.may.includes(column)) {
      return trouble(column, typed, `“${kind}” has no ${column}. Clear the cell, or put it in a row of the kind that has it.`);
    }
    if ((column === 'new_colony' || (column === 'colony' && kind === 'install')) && [...typed].length > longestLabel) {
      return trouble(column, typed, `A label has at most ${longestLabel} characters; this one has ${[...typed].length}. Shorten it, and put the rest in the note.`);
    }
    const reading = readCell(typed, fields[column], column, order);
    if (!reading.ok) return trouble(column, typed, reading.sentence);
    values[column] = reading.value;
  }
  const missing = form.must.find((column) => values[column] === undefined);
  if (missing !== undefined) return trouble(missing, '', `“${kind}” needs ${missing}, and the cell is empty. Fill it in.`);
  return finish({ day, kind, values });
}

function readCell(typed: string, field: FieldType, column: Column, order: DateOrder): Reading {
  switch (field.type) {
    case 'text':
      return { ok: true, value: typed };
    case 'yard':
    case 'colony':
    case 'place':
      // Two names that look the same are the same: spreadsheets are full of spaces that do not break.
      return { ok: true, value: typed.replace(/\p{Zs}+/gu, ' ') };
    case 'day': {
      const read = dayFromTyped(typed, order);
      return read === null || !isLikelyYear(yearOf(read)) ? no(`“${typed}” is no day of the calendar, or its year is mistyped. Write it as 2025-04-19.`) : { ok: true, value: read };
    }
    case 'year': {
      const year = Number(typed);
      return /^\d{4}$/.test(typed) && isLikelyYear(year) ? { ok: true, value: year } : no(`“${typed}” is no year. Write four digits, as 2025.`);
    }
    case 'yes-no': {
      const answer = typed.toLowerCase();
      return answer === 'yes' || answer === 'no' ? { ok: true, value: answer === 'yes' } : no(`“${typed}” is neither yes nor no.`);
    }
    case 'choice': {
      const choice = field.of.find((known) => known === typed.toLowerCase());
      return choice === undefined ? no(`“${typed}” is not known here. Use one of: ${field.of.join(', ')}.`) : { ok: true, value: choice };
    }
    case 'causes':
      return readCauses(typed);
    case 'money': {
      const amount = readNumber(typed, { min: 0, max: mostMoney, over: 'no apiary deals in so much' });
      if (!amount.ok) return amount;
      const minor = minorFrom(amount.value);
      return minor === null ? no(`“${typed}” has parts of a cent. Write at most two decimals.`) : { ok: true, value: minor };
    }
    case 'number': {
      const read = readNumber(typed, field, column);
      if (read.ok && field.whole === true && !Number.isInteger(read.value)) return no(`“${typed}” is not a whole number, and ${column} is counted in whole ones.`);
      return read;
    }
  }
}

const unitOf: Partial<Record<Column, string>> = { moisture: 'per cent', hours: 'hours', miles: 'miles', gross: 'the unit beside it', tare: 'the unit beside it', weight: 'the unit beside it', amount: 'the unit beside it' };

interface Limits {
  readonly min: number;
  readonly max: number;
  /** Why nothing is above it. */
  readonly over: string;
}

function readNumber(typed: string, { min, max, over }: Limits, column?: Column): { ok: true; value: number } | { ok: false; sentence: string } {
  if (!number.test(typed)) return no(notANumber(typed, column));
  // Nothing below zero is nothing.
  const value = Number(typed) + 0;
  if (value < min) return no(value < 0 ? `“${typed}” is below zero.` : `“${typed}” is below ${min}, the least that makes sense${min === 1 ? '' : `: ${over}`}.`);
  if (value > max) return no(`“${typed}” is above ${figureText(max)}, the most that makes sense: ${over}.`);
  return { ok: true, value };
}

const vulgar: Readonly<Record<string, string>> = { '½': '0.5', '¼': '0.25', '¾': '0.75' };

/** What a text has that is read as no number, and how it would be written. */
function notANumber(typed: string, column?: Column): string {
  if (/^[+-]?\d+,\d{3}$/.test(typed) && !/^[+-]?0/.test(typed)) return `“${typed}” has a comma, which can part thousands or decimals. Write ${typed.replace(',', '')}, or ${typed.replace(',', '.')}.`;
  if (/^[+-]?\d{1,3}(,\d{3})+(\.\d*)?$/.test(typed)) return `“${typed}” has commas between its thousands. Write it without them, as ${typed.replaceAll(',', '')}.`;
  if (/^[+-]?\d+,\d+$/.test(typed)) return `“${typed}” has a decimal comma. Write a point, as ${typed.replace(',', '.')}.`;
  if (/^[+-]?(\d+\.?\d*|\.\d+)e[+-]?\d+$/i.test(typed)) return `“${typed}” is written in powers of ten. Write it out in digits, as 1200.`;
  const [, whole = '0', above = '', below = ''] = /^(?:(\d{1,4})\s+)?(\d{1,4})\s*[/⁄]\s*(\d{1,4})$/.exec(typed) ?? [];
  if (Number(below) > 0) return `“${typed}” is a fraction. Write it with a point, as ${figureText(Number(whole) + Number(above) / Number(below), 3)}.`;
  const [, before = '', part = ''] = /^(\d{0,4})\s*([½¼¾])$/.exec(typed) ?? [];
  if (part !== '') return `“${typed}” is a fraction. Write it with a point, as ${Number(before) + Number(vulgar[part])}.`;
  if (/\p{Sc}/u.test(typed)) return `“${typed}” has a sign of money with it. Write the figure alone, as 185.50.`;
  if (/[^\P{Nd}0-9]/u.test(typed)) return `“${typed}” has digits of another writing. Write it with the digits 0 to 9${number.test(typed.normalize('NFKC')) ? `, as ${typed.normalize('NFKC')}` : ''}.`;
  if (/^[+-]?\s*(?:\d+[.,]?\d*)\s*(?:%|°|[a-z]{1,8}\.?$)/i.test(typed)) {
    const unit = column === undefined ? undefined : unitOf[column];
    return `“${typed}” has a unit with it. Write the figure alone${unit === undefined ? '' : `, in ${unit}`}.`;
  }
  return `“${typed}” is not a number. Write digits only, as 4.5.`;
}

function readCauses(typed: string): Reading {
  const named = typed.split(';').map((cause) => cause.trim().toLowerCase()).filter((cause) => cause !== '');
  const strange = named.find((cause) => !(causes as readonly string[]).includes(cause));
  if (strange !== undefined) return no(`“${strange}” is not a cause known here. Use one or several of: ${causes.join('; ')}. Put the rest in the note.`);
  return { ok: true, value: [...new Set(named)] };
}

/** Days; nothing stays in a hive for longer than a year and counts as one treatment (common practice, no source). */
const longestTreatment = 366;

/** Checks that need more than one cell, and masses and amounts brought to grams and millilitres. */
function finish(row: TypedRow): RowReading {
  const values: Partial<Record<Column, CellValue>> = { ...row.values };
  const { unit } = values;
  const queenYear = values.queen_year;
  if (typeof queenYear === 'number' && queenYear > yearOf(row.day)) {
    return trouble('queen_year', String(queenYear), `A queen that hatched in ${queenYear} cannot be there on ${dayInWords(row.day)}. Check the year or the date.`);
  }
  if (typeof queenYear === 'number' && yearOf(row.day) - queenYear > oldestQueen) {
    return trouble('queen_year', String(queenYear), `A queen that hatched in ${queenYear} would be ${yearOf(row.day) - queenYear} years old on ${dayInWords(row.day)}; none lives above ${oldestQueen}. Check the year or the date.`);
  }
  if (typeof values.hours === 'number' && values.hours > 24 * Number(values.people ?? 1)) {
    const people = Number(values.people ?? 1);
    return trouble('hours', String(values.hours), `${figureText(values.hours, 2)} hours are more than a day has for ${people === 1 ? 'one person' : `${people} people`}. Enter each day by itself${values.people === undefined ? ', or say how many people worked' : ''}.`);
  }
  if (typeof values.item === 'string' && typeof values.quantity === 'number') {
    const broken = wholeTrouble(values.quantity, values.item, typeof values.note === 'string' ? values.note : '');
    if (broken !== null) return trouble('quantity', String(values.quantity), broken);
  }
  if (row.kind === 'install' && typeof values.yard === 'string' && reserved.has(values.yard.toLowerCase())) {
    return trouble('yard', values.yard, `“${values.yard}” means something else, so no yard can be called that. Give the yard another name.`);
  }
  const until = values.end_date;
  if (typeof until === 'string' && until < row.day) return trouble('end_date', until, `The end ${until} lies before the start ${row.day}. Check both days.`);
  if (typeof until === 'string' && daysBetween(row.day, until as Day) > longestTreatment) return trouble('end_date', until, `The end ${until} lies more than a year after the start ${row.day}. Check both days.`);
  if (typeof values.mites === 'number' && typeof values.bees === 'number' && values.mites > values.bees) {
    return trouble('mites', String(values.mites), `${values.mites} mites in a sample of ${values.bees} bees: check whether the two figures changed places.`);
  }
  if (row.kind === 'harvest' || row.kind === 'stores') {
    if (unit !== 'lb' && unit !== 'kg') return trouble('unit', String(unit ?? ''), 'Weights are in lb or kg. Write one of them.');
    for (const column of ['gross', 'tare', 'weight'] as const) {
      const amount = values[column];
      if (typeof amount === 'number') values[column] = gramsFrom(amount, unit);
    }
  }
  if (row.kind === 'harvest') {
    if ((values.tare as number) > (values.gross as number)) {
      return trouble('tare', String(row.values.tare), `The empty weight ${String(row.values.tare)} is more than the full weight ${String(row.values.gross)}. Check whether the two changed places.`);
    }
    if (values.colony === undefined && values.yard === undefined) return trouble('colony', '', 'A harvest names its colony, or the yard for the honey of the yard together. Fill in one of them.');
  }
  if (row.kind === 'treatment' && values.colony === undefined && values.yard === undefined) {
    return trouble('colony', '', 'A treatment names its colony, or the yard for every colony there. Fill in one of them.');
  }
  if (row.kind === 'sale' && values.colony === undefined && values.item === undefined) return trouble('colony', '', 'A sale names the colony or the item sold. Fill in one of them.');
  if (row.kind === 'work' && values.hours === undefined && values.task === undefined && values.miles === undefined && values.note === undefined) {
    return trouble('hours', '', 'A row of work needs its hours, its miles or its task. Fill in one of them.');
  }
  if (row.kind === 'feed') {
    const amount = values.amount;
    if ((amount === undefined) !== (unit === undefined)) {
      return amount === undefined ? trouble('amount', '', 'The unit stands without an amount. Fill in how much.') : trouble('unit', '', `The amount has no unit. Write one of: ${amountUnits.join(', ')}.`);
    }
    if (typeof amount === 'number') {
      values.amount = unit === 'gal' || unit === 'l' ? { measure: 'volume', millilitres: millilitresFrom(amount, unit) } : { measure: 'mass', grams: gramsFrom(amount, unit as 'lb' | 'kg') };
    }
  }
  return { ok: true, row: { ...row, values } };
}

function trouble(column: Column, value: string, sentence: string): { ok: false; trouble: RowTrouble } {
  return { ok: false, trouble: { column, value, sentence } };
}

function no(sentence: string): { ok: false; sentence: string } {
  return { ok: false, sentence };
}
