import { addDays, type Day } from '#shared/days.ts';
import { dayShort, missing, number } from '../parts/format.ts';
import type { SurvivalLine } from './survivalGeometry.ts';
import { words } from './words.ts';

/** The survival picture in figures: one row for each day with a loss, group by group. */
export function SurvivalTable({ lines, origin, caption }: { readonly lines: readonly SurvivalLine[]; readonly origin: Day | null; readonly caption: string }) {
  return (
    <table className="tight">
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{words.group}</th>
          <th scope="col" className="number">
            {words.day}
          </th>
          <th scope="col" className="number">
            {words.atRisk}
          </th>
          <th scope="col" className="number">
            {words.lost}
          </th>
          <th scope="col" className="number">
            {words.alive}
          </th>
          <th scope="col" className="number">
            {words.plausible}
          </th>
        </tr>
      </thead>
      {lines.map(({ key, label, curve }) => (
        <tbody key={key}>
          <tr>
            <th scope="row">{label}</th>
            <td className="number">{origin === null ? number(0) : dayShort(origin)}</td>
            <td className="number">{curve.colonies === 0 ? words.noColonies : number(curve.strip[0]?.atRisk ?? curve.colonies)}</td>
            <td className="number">{curve.colonies === 0 ? missing : number(0)}</td>
            <td className="number">{curve.colonies === 0 ? missing : number(100)}</td>
            <td className="number">{missing}</td>
          </tr>
          {curve.times.map((time, index) => (
            <tr key={time}>
              <td />
              <td className="number">{origin === null ? number(time) : dayShort(addDays(origin, Math.floor(time)))}</td>
              <td className="number">{number(curve.atRisk[index])}</td>
              <td className="number">{number(curve.lost[index])}</td>
              <td className="number">{share(curve.survival[index])}</td>
              <td className="number">{range(curve.low[index], curve.high[index])}</td>
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  );
}

function share(value: number | null | undefined): string {
  return value === null || value === undefined ? missing : number(value * 100);
}

function range(low: number | null | undefined, high: number | null | undefined): string {
  return low === null || low === undefined || high === null || high === undefined ? missing : `${share(low)}–${share(high)}`;
}
