import type { StockTable } from '#shared/contract/stock.ts';
import { countedItems } from '#shared/itemWords.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { CountForm } from './CountForm.tsx';
import { MovementForm } from './MovementForm.tsx';
import { RuleList } from './RulesMargin.tsx';
import { ShedCounts, ShedMovements } from './ShedLists.tsx';
import { ShedDeadOuts } from './ShedDeadOuts.tsx';
import { ShedShortages } from './ShedShortages.tsx';
import { ShedTable } from './ShedTable.tsx';
import './shed.css';
import { shedWords as words } from './shedWords.ts';

/** The equipment account: what is on hives, free, to check and to mend, by item and place, with the forms that change it. `known` are item names to offer. */
export function ShedSection({ known }: { readonly known: readonly string[] }) {
  const { data: table, fault } = useRead('stock.table', {}, { keep: true });
  const items = [...new Set([...(table?.items ?? []).map(({ item }) => item), ...known])];
  return (
    <section className="section shed" aria-label={words.heading}>
      <h2>{words.heading}</h2>
      <FaultNote fault={fault} />
      {table && (
        <>
          {table.items.length === 0 ? <p className="soft">{words.empty}</p> : <Summary table={table} />}
          {table.shortages.length > 0 && (
            <Entering>
              <ShedShortages shortages={table.shortages} />
            </Entering>
          )}
          {table.items.length > 0 && <ShedTable items={table.items} />}
          {table.deadOuts.length > 0 && (
            <Entering>
              <ShedDeadOuts deadOuts={table.deadOuts} count={table.deadOutCount} caution={table.caution} />
            </Entering>
          )}
          <div className="pair section">
            <Entering>
              <MovementForm items={items} places={[]} />
              <CountForm items={items} />
            </Entering>
          </div>
          <div className="pair section">
            <ShedMovements movements={table.movements} />
            <ShedCounts counts={table.counts} />
          </div>
          <MarginContent heading={words.behind}>
            <details className="rule-parts">
              <summary>{words.assumptions}</summary>
              {table.assumptions.map((sentence) => (
                <p key={sentence}>{sentence}</p>
              ))}
            </details>
            <details className="rule-parts">
              <summary>{words.rules}</summary>
              <RuleList rules={table.rules} />
            </details>
          </MarginContent>
        </>
      )}
    </section>
  );
}

/** The account in one sentence. */
function Summary({ table }: { readonly table: StockTable }) {
  const boxes = table.items.find(({ item }) => item === 'deep box');
  const due = table.items.reduce((sum, item) => sum + (item.due ?? 0), 0);
  const mend = table.items.filter(({ toMend }) => toMend > 0).map(({ item, toMend }) => countedItems(toMend, item));
  const parts = [
    ...(boxes ? [words.summaryHives(countedItems(boxes.onHives, boxes.item), number(boxes.free, 1))] : []),
    ...(table.deadOutCount > 0 ? [words.summaryDeadOuts(table.deadOutCount)] : []),
    ...(mend.length > 0 ? [words.summaryMend(mend.slice(0, 3).join(', '))] : []),
    ...(due > 0 ? [words.summaryDue(number(due))] : []),
  ];
  return parts.length === 0 ? null : <p className="sentence">{`${parts.join('; ')}.`}</p>;
}
