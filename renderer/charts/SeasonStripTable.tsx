import type { ColonyStrip } from '#shared/contract/strip.ts';
import type { Day } from '#shared/days.ts';
import { dayText, fixed, missing, number } from '../parts/format.ts';
import type { StripSeason } from './stripGeometry.ts';
import { words } from './words.ts';

interface Line {
  bees: number | null;
  brood: number | null;
  stores: number | null;
  mites: string[];
  supers: number | null;
  done: string[];
}

/** The season's strip in figures, a line for each day on which something was written down. */
export function SeasonStripTable({ strip, season, caption, honeyText }: { readonly strip: ColonyStrip; readonly season: StripSeason; readonly caption: string; readonly honeyText: (pounds: number) => string }) {
  const lines = linesOf(strip, season, honeyText);
  return (
    <table className="tight">
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{words.day}</th>
          <th scope="col" className="number">
            {words.bees}
          </th>
          <th scope="col" className="number">
            {words.brood}
          </th>
          <th scope="col" className="number">
            {words.stores}
          </th>
          <th scope="col" className="number">
            {words.mitesRange}
          </th>
          <th scope="col" className="number">
            {words.supersOn}
          </th>
          <th scope="col">{words.done}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(([day, line]) => (
          <tr key={day}>
            <th scope="row">{dayText(day)}</th>
            <td className="number">{number(line.bees, 1)}</td>
            <td className="number">{number(line.brood, 1)}</td>
            <td className="number">{number(line.stores, 1)}</td>
            <td className="number">{line.mites.length === 0 ? missing : line.mites.join(', ')}</td>
            <td className="number">{number(line.supers)}</td>
            <td>{line.done.join(' ')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function linesOf(strip: ColonyStrip, season: StripSeason, honeyText: (pounds: number) => string): [Day, Line][] {
  const lines = new Map<Day, Line>();
  const on = (day: Day): Line | null => {
    if (day < season.from || day >= season.until) return null;
    const line = lines.get(day) ?? { bees: null, brood: null, stores: null, mites: [], supers: null, done: [] };
    lines.set(day, line);
    return line;
  };
  for (const { day, bees, brood, stores } of strip.looks) {
    const line = on(day);
    if (line) [line.bees, line.brood, line.stores] = [bees ?? line.bees, brood ?? line.brood, stores ?? line.stores];
  }
  for (const { day, per100, range } of strip.mites) on(day)?.mites.push(`${fixed(per100, 1)} (${fixed(range[0], 1)}–${fixed(range[1], 1)})`);
  for (const change of strip.supers) {
    const line = on(change.day);
    if (line) line.supers = change.on;
  }
  for (const { day, sentence } of [...strip.queens, ...strip.treatments, ...strip.feeds]) on(day)?.done.push(sentence);
  for (const { day, lb } of strip.honey) on(day)?.done.push(words.honeyTaken(honeyText(lb)));
  return [...lines].toSorted(([a], [b]) => (a < b ? -1 : 1));
}
