import { Fragment } from 'react';
import type { BudgetAmounts, BudgetLineView, Each, ReturnsView } from '#shared/contract/returns.ts';
import { gramsPerPound, type MassUnit } from '#shared/units.ts';
import '../../parts/behind.css';
import { useBook } from '../../desk/useBook.ts';
import { fixed, massFromPounds } from '../../parts/format.ts';
import { amountText } from './amountText.ts';
import { words } from './words.ts';

/** Which figure is opened: a line or a whole side, in one yard, in none, or together. */
export interface Chosen {
  readonly side: 'cost' | 'return';
  /** Null: all lines of the side. */
  readonly line: string | null;
  /** Code of a yard; null: no yard named; undefined: together. */
  readonly yard: string | null | undefined;
  readonly title: string;
}

interface TableProps {
  readonly view: ReturnsView;
  readonly chosen: Chosen | null;
  readonly onChoose: (chosen: Chosen | null) => void;
}

/** Lines down, yards across; what names no yard in a column of its own, and the sums ruled double. */
export function ReturnsTable({ view, chosen, onChoose }: TableProps) {
  const { book } = useBook();
  const unit = book?.massUnit ?? 'lb';
  const columns = words.columnsOf(view);
  const head = (text: string) => (
    <tr className="returns-head">
      <th scope="rowgroup" colSpan={columns.length + 1}>
        {text}
      </th>
    </tr>
  );
  const row = (side: Chosen['side'], name: string, amounts: BudgetAmounts, line: string | null) => (
    <tr key={name} className={line === null ? 'totals' : ''}>
      <th scope="row">{name}</th>
      {cellsOf(amounts).map((amount, at) => {
        const yard = at < view.yards.length ? view.yards[at]?.code : at === view.yards.length ? null : undefined;
        const title = words.in(name, columns[at] ?? '');
        const open = chosen?.title === title;
        return (
          <td key={columns[at]} className="number">
            {amount === 0 ? (
              <span className="soft">{amountText(0)}</span>
            ) : (
              <button type="button" className="figure-behind" aria-expanded={open} aria-label={words.open(amountText(amount), title)} onClick={() => onChoose(open ? null : { side, line, yard, title })}>
                {amountText(amount)}
              </button>
            )}
          </td>
        );
      })}
    </tr>
  );
  const lines = (side: Chosen['side'], all: readonly BudgetLineView[]) => all.map((one) => row(side, words.lines[one.line] ?? one.line, one, one.line));
  return (
    <div className="scroll" tabIndex={0} role="group" aria-label={words.title}>
      <table className="tight returns-table">
        <caption className="visually-hidden">{words.title}</caption>
        <thead>
          <tr>
            <th scope="col">{words.lineHead}</th>
            {columns.map((column) => (
              <th key={column} scope="col" className="number">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {head(words.returns)}
          {lines('return', view.returns)}
          {row('return', words.allReturns, view.allReturns, null)}
        </tbody>
        <tbody>
          {head(words.costs)}
          {lines('cost', view.costs)}
          {row('cost', words.allCosts, view.allCosts, null)}
        </tbody>
        <tbody>
          <tr className="totals">
            <th scope="row">{words.net}</th>
            {cellsOf(view.net).map((amount, at) => (
              <td key={columns[at]} className="number">
                {amountText(amount)}
              </td>
            ))}
          </tr>
        </tbody>
        <tbody>
          <tr>
            <th scope="row">{words.kept}</th>
            {view.yards.map(({ code, colonies }) => (
              <td key={code} className="number">
                {fixed(colonies, 1)}
              </td>
            ))}
            <td />
            <td className="number">{fixed(view.colonies, 1)}</td>
          </tr>
          <EachRows heading={words.perColony} of={view.yards.map(({ code, perColony }) => ({ code, each: perColony }))} all={view.perColony} times={1} />
          <tr>
            <th scope="row">{words.pounds(unit)}</th>
            {view.yards.map(({ code, pounds }) => (
              <td key={code} className="number">
                {massFromPounds(pounds, unit, 0)}
              </td>
            ))}
            <td />
            <td className="number">{massFromPounds(view.pounds, unit, 0)}</td>
          </tr>
          <EachRows heading={words.perPound(unit === 'kg' ? 'kilogram' : 'pound')} of={view.yards.map(({ code, perPound }) => ({ code, each: perPound }))} all={view.perPound} times={perMass(unit)} />
        </tbody>
      </table>
    </div>
  );
}

/** An amount for each pound, for each of the book's own unit. */
function perMass(unit: MassUnit): number {
  return unit === 'kg' ? 1000 / gramsPerPound : 1;
}

function EachRows({ heading, of, all, times }: { readonly heading: string; readonly of: readonly { readonly code: string; readonly each: Each }[]; readonly all: Each; readonly times: number }) {
  const shown = (each: Each, key: 'returns' | 'costs' | 'net') => amountText(each[key] === null ? null : Math.round(each[key] * times));
  return (
    <>
      {(['returns', 'costs', 'net'] as const).map((key) => (
        <Fragment key={key}>
          <tr className="returns-each">
            <th scope="row">
              {heading}, {words.eachRow[key]}
            </th>
            {of.map(({ code, each }) => (
              <td key={code} className="number" title={each.why ?? undefined}>
                {shown(each, key)}
              </td>
            ))}
            <td />
            <td className="number">{shown(all, key)}</td>
          </tr>
        </Fragment>
      ))}
    </>
  );
}

function cellsOf({ byYard, notAssigned, total }: BudgetAmounts): number[] {
  return [...byYard, notAssigned, total];
}
