import { amountUnits, fields, massUnits, type Cells, type Column } from '#shared/entryForms.ts';
import { converted, plainText, typedFigure, unitNamed, type MeasureUnit } from '#shared/typedMeasure.ts';

/** What a column is asked for in, beside its bare number, and words that may stand after it and mean nothing else. */
const asked: Partial<Record<Column, { readonly unit?: MeasureUnit; readonly own?: readonly string[] }>> = {
  frames_bees: { own: ['frame', 'frames'] },
  frames_brood: { own: ['frame', 'frames'] },
  frames_stores: { own: ['frame', 'frames'] },
  mites: { own: ['mite', 'mites'] },
  bees: { own: ['bee', 'bees'] },
  count: { own: ['box', 'boxes', 'super', 'supers'] },
  people: { own: ['person', 'people'] },
  moisture: { unit: '%' },
  hours: { unit: 'h' },
  miles: { unit: 'miles' },
  price: { own: ['$', 'dollar', 'dollars', 'usd'] },
};

/** Columns whose unit is a cell of its own. */
const weighed: readonly Column[] = ['gross', 'tare', 'weight', 'amount'];

/**
 * A row as the desk reads it: numbers with a point, their own unit left away, another one turned into theirs where that is
 * exact. What is no number, or in a unit that is none of its own, stays as typed, for the desk to say so.
 */
export function plainCells(row: Cells): Cells {
  const out: Cells = { ...row, ...weights(row) };
  for (const column of Object.keys(row) as Column[]) {
    const field = column === 'date' || column === 'entry' ? null : fields[column];
    const typed = row[column];
    if (typed === undefined || weighed.includes(column) || (field?.type !== 'number' && field?.type !== 'money')) continue;
    // Only of what has a unit of its own is it sure that the comma parts decimals where thousands would be absurd.
    const most = field.type === 'number' && column === 'moisture' ? field.max : undefined;
    const found = typedFigure(typed, most);
    const { unit, own = [] } = asked[column] ?? {};
    const named = found === null ? null : unitNamed(found.unit);
    const value = found === null ? null : found.unit === '' || own.includes(found.unit) ? found.amount : named === null || unit === undefined ? null : converted(found.amount, named, unit);
    if (value !== null) out[column] = plainText(value);
  }
  return out;
}

/** Weights and amounts: one alone brings its unit with it, several are turned into the one that is chosen. */
function weights(row: Cells): Cells {
  const read = weighed.flatMap((column) => {
    const found = typedFigure(row[column] ?? '');
    return found === null ? [] : [{ column, amount: found.amount, written: found.unit, named: unitNamed(found.unit) }];
  });
  const known: readonly string[] = row.amount === undefined ? massUnits : amountUnits;
  const [first] = read;
  const alone = read.length === 1 ? first?.named : undefined;
  const chosen = alone != null && known.includes(alone) ? alone : row.unit;
  const out: Cells = chosen === undefined ? {} : { unit: chosen };
  for (const { column, amount, written, named } of read) {
    const unit = (known as readonly MeasureUnit[]).find((one) => one === chosen);
    const value = written === '' ? amount : named === null || unit === undefined ? null : converted(amount, named, unit);
    if (value !== null) out[column] = plainText(value);
  }
  return out;
}
