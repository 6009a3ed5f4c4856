import { columns, type Cells, type Column } from '#shared/entryForms.ts';
import type { Grams, Minor } from '#shared/brands.ts';
import { massIn, moneyText, volumeIn, type MassUnit, type VolumeUnit } from '#shared/units.ts';
import type { Place } from './bodyParts.ts';
import type { Entry } from './kinds.ts';
import type { Names } from './kindRules.ts';
import { bodyKey } from './resolveRow.ts';
import type { Amount } from './typedRow.ts';

/** The row of the exchange form that stands for an entry; reading it again gives the same entry. */
export function writeRow(entry: Pick<Entry, 'day' | 'kind' | 'body'>, names: Names): Cells {
  const body = entry.body as Readonly<Record<string, unknown>>;
  const cells: Cells = { date: entry.day, entry: entry.kind };
  for (const column of columns) {
    if (column === 'date' || column === 'entry') continue;
    const text = cellText(column, entry.kind, body, names);
    if (text !== undefined) cells[column] = text;
  }
  return cells;
}

function cellText(column: Column, kind: Entry['kind'], body: Readonly<Record<string, unknown>>, names: Names): string | undefined {
  if (column === 'new_colony') return kind === 'split' ? (body.label as string) : undefined;
  if (column === 'colony' && kind === 'install') return body.label as string;
  const value = body[bodyKey(column)];
  if (value === undefined) return undefined;
  switch (column) {
    case 'yard':
    case 'to_yard':
      return names.yard(value as never).code;
    case 'colony':
    case 'into':
      return names.colony(value as never);
    case 'from':
    case 'to': {
      const place = value as Place;
      return typeof place === 'string' ? place.toLowerCase() : names.yard(place.yard).code;
    }
    case 'gross':
    case 'tare':
    case 'weight':
      return plain(massIn(value as Grams, body.unit as MassUnit));
    case 'amount': {
      const amount = value as Amount;
      return plain(amount.measure === 'mass' ? massIn(amount.grams, body.unit as MassUnit) : volumeIn(amount.millilitres, body.unit as VolumeUnit));
    }
    case 'price':
      return moneyText(value as Minor);
    case 'cause':
      return (value as readonly string[]).join(';');
    default:
      return typeof value === 'boolean' ? (value ? 'yes' : 'no') : typeof value === 'number' ? plain(value) : String(value);
  }
}

/** Decimal text without exponent. */
function plain(value: number): string {
  return Number.isInteger(value) ? String(value) : value.toFixed(10).replace(/0+$/, '').replace(/\.$/, '');
}

/** All cells of a row as one text; two rows equal in every cell have the same. */
export function rowKey(cells: Cells): string {
  return columns.map((column) => cells[column] ?? '').join('\u001f');
}
