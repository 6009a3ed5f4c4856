import { Link } from 'wouter';
import type { LotLine } from '#shared/contract/lots.ts';
import type { MassUnit } from '#shared/units.ts';
import { counted, dayTight, fixed, missing, number } from '../../parts/format.ts';
import { lotAddress } from '../../parts/lotAddress.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { massFigure, massText } from './honeyText.ts';
import { accountWord } from './lotsCsv.ts';
import { words } from './words.ts';

interface LotsTableProps {
  readonly lots: readonly LotLine[];
  readonly unit: MassUnit;
  /** Per cent water that the place allows. */
  readonly limit: number;
}

/** Lots with what came in, what was filled from it and what is left, and whether that adds up. */
export function LotsTable({ lots, unit, limit }: LotsTableProps) {
  const { shown, more } = useFirstRows(lots, words.lots);
  const note = useMarginNote();
  const sum = (of: (lot: LotLine) => number) => lots.reduce((total, lot) => total + of(lot), 0);
  if (lots.length === 0) return <p className="soft">{words.none}</p>;
  return (
    <>
      <div className="scroll" tabIndex={0} role="group" aria-label={words.lots}>
        <table className="tight honey-lots">
          <caption className="visually-hidden">{words.lots}</caption>
          <thead>
            <tr>
              {[words.lot, words.harvested, words.yards].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
              {[`${words.gross}, ${unit}`, `${words.net}, ${unit}`, words.water, words.jars, words.jarsLeft, `${words.bulk}, ${unit}`].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <th scope="col">{words.account}</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((lot) => (
              <tr key={lot.code} {...note(() => <LotNote lot={lot} unit={unit} />)}>
                <th scope="row">
                  <Link href={lotAddress(lot.code)}>{lot.code}</Link>
                </th>
                <td>{lot.from === lot.until ? dayTight(lot.from) : `${dayTight(lot.from)} – ${dayTight(lot.until)}`}</td>
                <td>{lot.yards.length === 0 ? missing : lot.yards.join(', ')}</td>
                <td className="number">{massFigure(lot.account.gross, unit)}</td>
                <td className="number">{massFigure(lot.account.harvested, unit)}</td>
                <td className={lot.within === false ? 'number needs' : 'number'}>
                  {lot.within === false ? `${words.over} ` : null}
                  {/* What rounds to the limit and is over it says so with its digits. */}
                  {fixed(lot.water, lot.within === false && (lot.water ?? 0) - limit < 0.05 ? 3 : 1)}
                </td>
                <td className="number">{number(filled(lot))}</td>
                <td className="number">{number(left(lot), 1).replace('-', '−')}</td>
                <td className="number">{massFigure(lot.account.bulk, unit)}</td>
                <td className={accountWord(lot) === words.broken || accountWord(lot) === words.tooHeavy ? 'needs' : undefined}>{accountWord(lot)}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row" colSpan={3}>
                {counted(lots.length, 'lot', 'lots')}
              </th>
              <td className="number">{massFigure(sum(({ account }) => account.gross), unit)}</td>
              <td className="number">{massFigure(sum(({ account }) => account.harvested), unit)}</td>
              <td />
              <td className="number">{number(sum(filled))}</td>
              <td className="number">{number(sum(left), 1).replace('-', '−')}</td>
              <td className="number">{massFigure(sum(({ account }) => account.bulk), unit)}</td>
              <td />
            </tr>
          </tfoot>
        </table>
      </div>
      {more}
    </>
  );
}

function filled({ jars }: LotLine): number {
  return jars.reduce((sum, one) => sum + one.filled, 0);
}

function left({ jars }: LotLine): number {
  return jars.reduce((sum, one) => sum + one.left, 0);
}

function LotNote({ lot, unit }: { readonly lot: LotLine; readonly unit: MassUnit }) {
  const { account, troubles, jars } = lot;
  return (
    <>
      <MarginPart heading={lot.code}>
        <p>{words.note(counted(lot.harvests, 'harvest', 'harvests'), massText(account.gross - account.tare, unit), lot.measured)}</p>
        {Math.abs(account.pouredIn) < 0.5 ? null : <p>{words.poured(massText(account.pouredIn, unit))}</p>}
        {Math.abs(account.difference) < 0.5 ? null : <p>{words.scale(massText(Math.abs(account.difference), unit), account.difference < 0)}</p>}
        {jars.map((jar) => (
          <p key={`${jar.words} ${jar.bestBefore}`}>{words.jarsOf(jar.words, number(jar.filled), number(jar.sold, 1))}</p>
        ))}
      </MarginPart>
      {troubles.length === 0 ? null : (
        <MarginPart heading={words.troubles}>
          {troubles.map((trouble) => (
            <p key={trouble}>{trouble}</p>
          ))}
        </MarginPart>
      )}
    </>
  );
}
