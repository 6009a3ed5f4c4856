import { fixed } from '../parts/format.ts';
import type { SurvivorData } from './survivorGeometry.ts';
import { words } from './words.ts';

/** The survivor picture in figures; chances below a hundredth of a per cent are left out. */
export function SurvivorTable({ data, caption }: { readonly data: SurvivorData; readonly caption: string }) {
  let atLeast = 1;
  const rows = data.chances.map(({ survivors, chance }) => {
    const row = { survivors, chance, atLeast };
    atLeast = Math.max(0, atLeast - chance);
    return row;
  });
  return (
    <table className="tight">
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col" className="number">
            {words.survivors}
          </th>
          <th scope="col" className="number">
            {words.chance}
          </th>
          <th scope="col" className="number">
            {words.atLeast}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows
          .filter(({ chance }) => chance >= 0.0001)
          .map((row) => (
            <tr key={row.survivors}>
              <th scope="row" className="number">
                {row.survivors}
              </th>
              <td className="number">{fixed(row.chance * 100, 2)}</td>
              <td className="number">{fixed(row.atLeast * 100, 1)}</td>
            </tr>
          ))}
      </tbody>
    </table>
  );
}
