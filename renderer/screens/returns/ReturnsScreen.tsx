import { useState } from 'react';
import { Link } from 'wouter';
import type { InputOf } from '#shared/contract/contract.ts';
import type { MoneyLineView, ReturnsView } from '#shared/contract/returns.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { csvText } from '../../parts/csv.ts';
import { download } from '../../parts/download.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { amountText } from './amountText.ts';
import { LinesBehind } from './LinesBehind.tsx';
import { ReturnsTable, type Chosen } from './ReturnsTable.tsx';
import './returns.css';
import { words } from './words.ts';

/** A season's costs and returns by the lines of a budget; every figure opens the entries behind it. */
export function ReturnsScreen() {
  const [season, setSeason] = useState<number | null>(null);
  const [hours, setHours] = useState(false);
  const [equipment, setEquipment] = useState<'parts' | 'paid'>('parts');
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const asked: InputOf<'returns.lines'> = { hours, equipment, ...(season === null ? {} : { season }) };
  const { data, fault, stale } = useRead('returns.season', asked, { keep: true });
  const behind = useRead('returns.lines', asked, { keep: true });
  return (
    <Page title={words.title} line={words.line} asOf={data?.asOf}>
      <FaultNote fault={fault} />
      {data ? (
        <>
          <div className="choices no-print">
            <label className="inline-choice">
              {words.season}{' '}
              <select value={data.season} onChange={(event) => setSeason(Number(event.target.value))}>
                {data.seasons.map(({ season: one, name }) => (
                  <option key={one} value={one}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
            <label className="inline-choice">
              {words.equipment}{' '}
              <select value={equipment} onChange={(event) => setEquipment(event.target.value === 'paid' ? 'paid' : 'parts')}>
                <option value="parts">{words.parts(ruleOf(data, 'returns.years'))}</option>
                <option value="paid">{words.paid}</option>
              </select>
            </label>
            <label className="inline-choice">
              <input type="checkbox" checked={hours} onChange={(event) => setHours(event.target.checked)} /> {words.hours(number(ruleOf(data, 'decision.hourValue'), 2))}
            </label>
            <button type="button" disabled={behind.data === undefined || behind.stale} onClick={() => behind.data && download(words.csvName(behind.data.seasonName), linesCsv(behind.data.lines))}>
              {words.csv}
            </button>
            <Link href="/book">{words.back}</Link>
          </div>
          <Awaited stale={stale}>
            <Account view={data} chosen={chosen} onChoose={setChosen} lines={behind.data?.lines ?? []} hours={hours} />
          </Awaited>
        </>
      ) : null}
      <MarginContent heading={words.marginHow}>
        {words.marginText.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <p>{words.marginNot}</p>
        <RulesLink room="returns" />
      </MarginContent>
    </Page>
  );
}

interface AccountProps {
  readonly view: ReturnsView;
  readonly chosen: Chosen | null;
  readonly onChoose: (chosen: Chosen | null) => void;
  readonly lines: readonly MoneyLineView[];
  readonly hours: boolean;
}

function Account({ view, chosen, onChoose, lines, hours }: AccountProps) {
  const nothing = view.returns.length === 0 && view.costs.length === 0;
  return (
    <section className="section" aria-label={words.title}>
      <p className="sentence">
        {nothing
          ? words.empty(view.seasonName)
          : words.sentence(view.seasonName, view.running, amountText(view.allReturns.total), amountText(view.allCosts.total), amountText(Math.abs(view.net.total)), view.net.total >= 0)}
      </p>
      {nothing ? null : <ReturnsTable view={view} chosen={chosen} onChoose={onChoose} />}
      {chosen === null ? null : <LinesBehind chosen={chosen} lines={lines} onClose={() => onChoose(null)} />}
      {view.allCosts.notAssigned === 0 && view.allReturns.notAssigned === 0 ? null : <p>{words.notAssignedSays(amountText(view.allCosts.notAssigned), amountText(view.allReturns.notAssigned))}</p>}
      {hours || (nothing && view.hours === 0) ? null : <p>{view.hours > 0 ? words.hoursLeft(number(view.hours, 1)) : words.noHours}</p>}
      {view.equipmentPaid > 0 ? <p>{words.equipmentSays(amountText(view.equipmentPaid))}</p> : null}
      {(nothing ? [] : whys(view)).map((why) => (
        <p key={why} className="needs">
          {why}
        </p>
      ))}
      {view.unpriced.length === 0 ? null : (
        <p>
          {words.unpriced(view.unpriced.length)}{' '}
          {view.unpriced.slice(0, 40).map((entry, at) => (
            <span key={entry}>
              {at > 0 ? ', ' : ''}
              <Link href={`/entries/${entry}`}>{words.unpricedEntry(at + 1)}</Link>
            </span>
          ))}
        </p>
      )}
    </section>
  );
}

function whys({ perColony, perPound }: ReturnsView): string[] {
  return [perColony.why, perPound.why].filter((why) => why !== null);
}

function ruleOf({ rules }: ReturnsView, key: string): number {
  const value = rules.find((rule) => rule.key === key)?.value;
  return typeof value === 'number' ? value : 0;
}

/** Costs below nothing, returns above it, so that the column adds up; decimals with a point. */
export function linesCsv(lines: readonly MoneyLineView[]): string {
  return csvText(
    words.csvHead,
    lines.map(({ day, kind, description, quantity, amount, side, line, yard, basis, entry }) => [day, kind, description, quantity, (side === 'cost' ? -amount : amount) / 100, line, yard, basis, entry]),
  );
}
