import type { YieldAnswer, YieldRow } from '#shared/contract/yields.ts';
import type { MassUnit } from '#shared/units.ts';
import { amountEnd, IntervalDot, IntervalScale, type IntervalRow } from '../../charts/IntervalDots.tsx';
import { counted, missing, number, percent } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import type { OpenedGroup } from './YieldBehind.tsx';
import { comparedOf, inUnit, ownRange, poundsText, withRange, type Compared } from './yieldText.ts';
import { yieldWords as words } from './yieldWords.ts';

interface TableProps {
  readonly answer: YieldAnswer;
  readonly unit: MassUnit;
  readonly opened: OpenedGroup | null;
  readonly onOpen: (group: OpenedGroup | null) => void;
}

const pictureWidth = 150;

/** Each group with how many were weighed, its mean as weighed, and what it is compared by with its range as a picture. */
export function YieldTable({ answer, unit, opened, onOpen }: TableProps) {
  const { by, rows, all } = answer;
  const title = words.table(by);
  const { shown, more } = useFirstRows(rows, title);
  const weighed = all.n >= answer.few;
  const comparing = by !== 'season' && weighed;
  const together = rows.some((row) => row.together !== null);
  const drawn = rows.map((row) => drawnRow(row, answer, unit));
  const end = amountEnd(drawn);
  return (
    <>
      <div className="scroll" tabIndex={0} role="group" aria-label={title}>
        <table className="tight yields">
          <caption className="visually-hidden">{title}</caption>
          <thead>
            <tr>
              <th scope="col">{words.heads[by]}</th>
              <th scope="col" className="number">
                {words.n}
              </th>
              <th scope="col" className="number">
                {words.mean(unit)}
              </th>
              {comparing && (
                <th scope="col" className="number">
                  {words.compared(unit)}
                </th>
              )}
              {weighed && (
                <th scope="col" className="yields-picture">
                  {words.picture}
                  <IntervalScale end={end} width={pictureWidth} tickText={(tick) => number(tick, 1)} />
                </th>
              )}
              {together && (
                <th scope="col" className="number">
                  {words.together(unit)}
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {shown.map((row, at) => (
              <Line key={row.key} row={row} answer={answer} unit={unit} comparing={comparing} together={together} opened={opened} onOpen={onOpen} drawn={weighed ? drawn[at] : undefined} end={end} />
            ))}
          </tbody>
          {all.n > 0 && rows.length > 1 && (
            <tfoot>
              <tr>
                <th scope="row">{words.all}</th>
                <td className="number">{number(all.n)}</td>
                <td className="number figure-range">{withRange(all.mean, ownRange(all.n, all.interval), all.n, unit)}</td>
                {[comparing, weighed, together].some(Boolean) && <td colSpan={[comparing, weighed, together].filter(Boolean).length} />}
              </tr>
            </tfoot>
          )}
        </table>
      </div>
      {more}
    </>
  );
}

interface LineProps extends TableProps {
  readonly row: YieldRow;
  readonly comparing: boolean;
  readonly together: boolean;
  readonly drawn: IntervalRow | undefined;
  readonly end: number;
}

function Line({ row, answer, unit, comparing, together, opened, onOpen, drawn, end }: LineProps) {
  const note = useMarginNote();
  const { key, label, n, mean, meanInterval } = row;
  const compared = comparedOf(row, answer.rows);
  const title = words.behind(label);
  const open = opened?.title === title;
  const counting = (count: number) => (
    <button type="button" className="figure-behind" aria-expanded={open} aria-label={words.showBehind(number(count), title)} onClick={() => onOpen(open ? null : { group: key, title })}>
      {number(count)}
    </button>
  );
  return (
    <tr {...note(<RowNote row={row} compared={compared} unit={unit} />)}>
      <th scope="row">{label}</th>
      <td className="number">
        {n === 0 ? missing : counting(n)}
      </td>
      <td className="number figure-range">{n === 0 ? missing : withRange(mean, ownRange(n, meanInterval), n, unit)}</td>
      {comparing && <td className="number figure-range">{withRange(compared.value, compared.range, n, unit)}</td>}
      {drawn !== undefined && (
        <td className="yields-picture">
          <IntervalDot row={drawn} end={end} width={pictureWidth} />
        </td>
      )}
      {together && (
        <td className="number">
          {row.together === null ? (
            missing
          ) : (
            <>
              {number(inUnit(row.together.lb, unit))} {words.of} {n === 0 ? counting(row.together.colonySeasons) : number(row.together.colonySeasons)}
              {row.together.colonySeasons === 0 ? '' : ` (${words.each(poundsText(row.together.lb / row.together.colonySeasons, unit))})`}
            </>
          )}
        </td>
      )}
    </tr>
  );
}

function drawnRow(row: YieldRow, { rows }: YieldAnswer, unit: MassUnit): IntervalRow {
  const { value, range } = comparedOf(row, rows);
  if (value === null) return { label: row.label, rate: null, interval: null, alt: words.noAlt(row.label) };
  const alt = range === null ? `${row.label}: ${withRange(value, null, row.n, unit)}` : words.alt(row.label, poundsText(value, unit), poundsText(range[0], unit), poundsText(range[1], unit), unit);
  return { label: row.label, rate: inUnit(value, unit), interval: range === null ? null : [inUnit(range[0], unit), inUnit(range[1], unit)], alt };
}

function RowNote({ row, compared, unit }: { readonly row: YieldRow; readonly compared: Compared; readonly unit: MassUnit }) {
  const { label, n, colonies, seasons, mean, evened, pooled, shrinkage, together } = row;
  return (
    <MarginPart heading={label}>
      {n > 0 && <p>{words.rowOwn(label, `${poundsText(mean, unit)} ${unit}`, counted(n, 'colony-season', 'colony-seasons'), counted(colonies, 'colony', 'colonies'), counted(seasons, 'season', 'seasons'))}</p>}
      {n > 0 && compared.value === null && <p>{words.rowApart}</p>}
      {evened && <p>{words.rowEvened}</p>}
      {pooled && shrinkage !== null && <p>{words.rowPulled(percent(shrinkage))}</p>}
      {together !== null && <p>{words.rowTogether(counted(together.colonySeasons, 'colony-season', 'colony-seasons'))}</p>}
    </MarginPart>
  );
}
