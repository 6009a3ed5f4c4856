import type { LotLine } from '#shared/contract/lots.ts';
import { gramsPerPound, type MassUnit } from '#shared/units.ts';
import { dayTight, fixed, number } from '../../parts/format.ts';
import { words } from './words.ts';

/** Lots with what came in, what was filled from it and what is left. */
export function LotsTable({ lots, unit }: { readonly lots: readonly LotLine[]; readonly unit: MassUnit }) {
  const inUnit = (grams: number) => number(unit === 'lb' ? grams / gramsPerPound : grams / 1000, 1);
  return (
    <table className="tight">
      <caption className="visually-hidden">{words.lots}</caption>
      <thead>
        <tr>
          <th scope="col">{words.lot}</th>
          <th scope="col">{words.harvested}</th>
          <th scope="col">{words.yards}</th>
          <th scope="col" className="number">
            {words.net(unit)}
          </th>
          <th scope="col" className="number">
            {words.water}
          </th>
          <th scope="col" className="number">
            {words.jars}
          </th>
          <th scope="col" className="number">
            {words.bulk(unit)}
          </th>
        </tr>
      </thead>
      <tbody>
        {lots.map(({ code, from, yards, account, water, jars }) => (
          <tr key={code}>
            <th scope="row">{code}</th>
            <td>{dayTight(from)}</td>
            <td>{yards.join(', ')}</td>
            <td className="number">{inUnit(account.harvested)}</td>
            <td className="number">{fixed(water, 1)}</td>
            <td className="number">{number(jars.reduce((sum, { filled }) => sum + filled, 0))}</td>
            <td className="number">{inUnit(account.bulk)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
