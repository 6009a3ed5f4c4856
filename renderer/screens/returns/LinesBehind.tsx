import { useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { CostLine, LineOfPurchase } from '#shared/contract/budgetLines.ts';
import type { MoneyLineView } from '#shared/contract/returns.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { BehindSection, BehindTable } from '../../parts/BehindSection.tsx';
import { Entering } from '../../parts/Entering.tsx';
import { dayText, missing, number } from '../../parts/format.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { amountText } from './amountText.ts';
import { LineChoice } from './LineChoice.tsx';
import type { Chosen } from './ReturnsTable.tsx';
import { words } from './words.ts';

/** The entries behind an opened figure, each with its page, and their sum. */
export function LinesBehind({ chosen, lines, onClose }: { readonly chosen: Chosen; readonly lines: readonly MoneyLineView[]; readonly onClose: () => void }) {
  const own = lines.filter(({ side, line, yard }) => side === chosen.side && (chosen.line === null || line === chosen.line) && (chosen.yard === undefined || yard === chosen.yard));
  const { shown, more } = useFirstRows(own, 'entries behind');
  const title = words.behind(chosen.title);
  const { send, busy } = useWrite('returns.chooseLine');
  const [moved, setMoved] = useState<LineOfPurchase | null>(null);
  const [fault, setFault] = useState<Fault | undefined>();
  const choose = async (entry: MoneyLineView['entry'], line: CostLine | null) => {
    if (busy) return;
    const answer = await send({ entry, line });
    setFault(answer.ok ? undefined : answer);
    if (answer.ok) setMoved(answer.value);
  };
  const said = useRef<HTMLParagraphElement>(null);
  // The row that was changed may be gone, and the keyboard with it.
  useEffect(() => {
    if (moved !== null && document.activeElement === document.body) said.current?.focus();
  }, [moved, lines]);
  const choices = own.some(({ bought }) => bought !== null);
  return (
    <BehindSection title={title} close={words.close} onClose={onClose} fault={fault}>
      {/* What was chosen may have left this list; it is said here, and taken back from here. */}
      {moved === null ? null : (
        <Entering>
          <p ref={said} role="status" tabIndex={-1}>
            {moved.chosen ? words.nowUnder(moved.item, words.lines[moved.line] ?? moved.line, words.lines[moved.guess] ?? moved.guess) : words.againUnder(moved.item, words.lines[moved.line] ?? moved.line)}{' '}
            {moved.chosen ? (
              <button type="button" className="link no-print" onClick={() => void choose(moved.entry, null)}>
                {words.takeBack}
              </button>
            ) : null}
          </p>
        </Entering>
      )}
      <BehindTable title={title} more={more}>
        <thead>
          <tr>
            <th scope="col">{words.day}</th>
            <th scope="col">{words.what}</th>
            <th scope="col">{words.yard}</th>
            <th scope="col" className="number">
              {words.quantity}
            </th>
            <th scope="col" className="number">
              {words.amount}
            </th>
            <th scope="col">{words.basis}</th>
            {choices && <th scope="col">{words.lineHead}</th>}
          </tr>
        </thead>
        <tbody>
          {shown.map((one) => (
            <Line key={`${one.entry} ${one.line}`} one={one} choices={choices} onChoose={(to) => void choose(one.entry, to)} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={4}>
              {words.all}
            </th>
            <td className="number">{amountText(own.reduce((sum, { amount }) => sum + amount, 0))}</td>
            <td colSpan={choices ? 2 : 1} />
          </tr>
        </tfoot>
      </BehindTable>
    </BehindSection>
  );
}

interface LineProps {
  readonly one: MoneyLineView;
  readonly choices: boolean;
  readonly onChoose: (line: CostLine | null) => void;
}

function Line({ one, choices, onChoose }: LineProps) {
  const { entry, day, description, quantity, amount, yard, basis } = one;
  return (
    <tr>
      <th scope="row">
        <Link href={`/entries/${entry}`}>{dayText(day)}</Link>
      </th>
      <td>{description}</td>
      <td>{yard ?? missing}</td>
      <td className="number">{number(quantity, 2)}</td>
      <td className="number">{amountText(amount)}</td>
      <td>{words.basisWord[basis]}</td>
      {choices && (
        <td>
          <LineChoice line={one} onChoose={onChoose} />
        </td>
      )}
    </tr>
  );
}
