import type { LotPage } from '#shared/contract/lots.ts';
import type { MassUnit } from '#shared/units.ts';
import { massFigure } from './honeyText.ts';
import { lotWords as words } from './lotWords.ts';

/** The account step by step: what came in, what went, and what is left when all is counted. */
export function LotAccount({ page, unit }: { readonly page: LotPage; readonly unit: MassUnit }) {
  const a = page.line.account;
  const steps: readonly (readonly [string, number])[] = [
    [words.pouredIn, a.pouredIn],
    [a.difference < 0 ? words.less : words.more, a.difference],
    [words.dried, -a.dried],
    [words.pouredOut, -a.pouredOut],
    [words.filled, -a.filled],
    [words.lost, -a.lost],
    [words.soldBulk, -a.soldBulk],
  ];
  const row = ([name, grams]: readonly [string, number], total = false) => (
    <tr key={name} className={total ? 'honey-subtotal' : undefined}>
      <th scope="row">{name}</th>
      <td className="number">{massFigure(grams, unit)}</td>
    </tr>
  );
  return (
    <table className="tight narrow honey-account">
      <caption>
        <h2>{words.account}</h2>
      </caption>
      <thead>
        <tr>
          <th scope="col">{words.step}</th>
          <th scope="col" className="number">
            {unit}
          </th>
        </tr>
      </thead>
      <tbody>
        {row([words.gross, a.gross])}
        {row([words.tare, -a.tare])}
        {row([words.harvested, a.harvested], true)}
        {steps.filter(([, grams]) => Math.abs(grams) >= 0.5).map((step) => row(step))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{words.left}</th>
          <td className={a.bulk < -0.5 ? 'number needs' : 'number'}>{massFigure(a.bulk, unit)}</td>
        </tr>
      </tfoot>
    </table>
  );
}
