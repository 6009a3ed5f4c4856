import type { Grams } from '#shared/brands.ts';
import type { LotPage } from '#shared/contract/lots.ts';
import { massIn, roundTo, type MassUnit } from '#shared/units.ts';
import { csvText } from '../../parts/csv.ts';

/**
 * A lot traced both ways, a line for each thing behind or ahead of it: harvests, colonies, treatments, then lots, jars and
 * sales. Days in ISO, masses in the book's unit; `entry` is the number in the journal.
 */
export function traceCsv(page: LotPage, unit: MassUnit): string {
  const { line } = page;
  const mass = (grams: number) => roundTo(massIn(grams as Grams, unit), 2);
  const rows: (string | number | null)[][] = [
    ...page.harvests.map(({ entry, day, yardName, label, net, moisture, via }) => ['back', 'harvest', via ?? line.code, day, yardName, label, mass(net), moisture, null, null, entry]),
    ...page.cameFrom.map(({ code, day, mass: grams }) => ['back', 'poured in from', code, day, null, null, mass(grams), null, null, null, null]),
    ...page.colonies.map(({ label, name, yard, together }) => ['back', together ? 'colony, weighed with its yard' : 'colony', line.code, null, yard, label, null, null, null, name === label ? null : name, null]),
    ...page.treatments.flatMap(({ entry, day, ingredient, yard, colonies, daysBefore }) => colonies.map(({ label, supers }) => ['back', 'treatment', line.code, day, yard, label, null, null, daysBefore, `${ingredient}, ${supers}`, entry])),
    ...page.wentTo.map(({ code, day, mass: grams }) => ['forward', 'poured into', code, day, null, null, mass(grams), null, null, null, null]),
    ...line.jars.map(({ words, filled, sold, left, bestBefore }) => ['forward', 'jars', line.code, null, null, null, null, null, null, `${filled} of ${words} filled, ${sold} sold, ${left} left${bestBefore === null ? '' : `, best before ${bestBefore}`}`, null]),
    ...page.sales.map(({ entry, day, item, quantity }) => ['forward', 'sale', line.code, day, null, null, null, null, null, `${quantity ?? ''} ${item}`.trim(), entry]),
  ];
  return csvText(['direction', 'what', 'lot', 'date', 'yard', 'colony', unit, 'water_percent', 'days_to_harvest', 'detail', 'entry'], rows);
}
