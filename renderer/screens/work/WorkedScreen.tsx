import { useState } from 'react';
import { Link } from 'wouter';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { WorkedRow } from '#shared/contract/worked.ts';
import { seasonName } from '#shared/seasons.ts';
import { gramsPerPound } from '#shared/units.ts';
import { readMeasure } from '#shared/typedMeasure.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, fixed, missing, number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { spell } from './planWeeks.ts';
import { WorkNav } from './WorkNav.tsx';
import './work.css';
import { fitsAsThen, isFew, workedWords as words } from './workedWords.ts';

/** Hours worked, planned and to come. */
export function WorkedScreen() {
  const { data, fault } = useRead('worked.seasons', {});
  const [chosen, setChosen] = useState<number | null>(null);
  const shown = data?.seasons.find(({ season }) => season === chosen) ?? data?.seasons[0];
  return (
    <Page title={words.title} line={data === undefined ? words.loading : words.line}>
      <WorkNav />
      <FaultNote fault={fault} />
      {data !== undefined && shown === undefined ? <Empty sentence={words.none} action={<p><Link href="/tonight">{words.toRound}</Link></p>} /> : null}
      {data === undefined || shown === undefined ? null : (
        <>
          <div className="choices">
            <label className="inline-choice">
              {words.season}{' '}
              <select value={shown.season} onChange={(event) => setChosen(Number(event.target.value))}>
                {data.seasons.map(({ season }) => (
                  <option key={season} value={season}>
                    {seasonName(season)}
                  </option>
                ))}
              </select>
            </label>
          </div>
          <Season key={shown.season} season={shown} unit={data.massUnit} />
          <Ahead />
          <Planned />
        </>
      )}
      <MarginContent heading={words.marginHours}>
        <p>{words.marginHoursText}</p>
      </MarginContent>
      <MarginContent heading={words.marginEstimate}>
        <p>{words.marginEstimateText}</p>
      </MarginContent>
      <MarginContent heading={words.marginAhead}>
        <p>{words.marginAheadText}</p>
      </MarginContent>
    </Page>
  );
}

type SeasonWorked = OutputOf<'worked.seasons'>['seasons'][number];

function Season({ season: { season, rows, total, busiest }, unit }: { readonly season: SeasonWorked; readonly unit: 'lb' | 'kg' }) {
  const { shown, more } = useFirstRows(rows, words.table(seasonName(season)));
  return (
    <section aria-label={words.table(seasonName(season))}>
      <p className="sentence">
        {total.estimate === null ? words.sentenceFew(fixed(total.hours, 1), total.visits, total.written) : words.sentence(estimateText(total), total.visits, total.written, perColonyText(total))}
      </p>
      <div className="scroll" tabIndex={0} role="group" aria-label={words.table(seasonName(season))}>
        <table className="tight" aria-label={words.table(seasonName(season))}>
          <thead>
            <tr>
              <th scope="col">{words.yard}</th>
              <th scope="col" className="number">
                {words.visits}
                <br />
                {words.written}
              </th>
              <th scope="col" className="number">
                {words.hours}
              </th>
              <th scope="col" className="number">
                {words.estimate}
              </th>
              <th scope="col" className="number">
                {words.miles}
              </th>
              <th scope="col" className="number">
                {words.colonies}
              </th>
              <th scope="col" className="number">
                {words.perColony}
              </th>
              <th scope="col" className="number">
                {words.perHour(unit)}
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <tr key={row.yard?.id ?? 'home'}>
                <th scope="row">{row.yard?.name ?? words.home}</th>
                <Figures row={row} unit={unit} />
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">{words.all}</th>
              <Figures row={total} unit={unit} />
            </tr>
          </tfoot>
        </table>
      </div>
      {more}
      <h3 className="after-table">{words.busiest}</h3>
      {busiest.length === 0 ? <p className="soft">{words.busiestNone}</p> : null}
      <ol className="lines">
        {busiest.map((week) => (
          <li key={week.monday}>
            <span>{dayText(week.monday)}</span>
            <span>{words.busyWeek(week.hours, week.visits, week.without)}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

function Figures({ row, unit }: { readonly row: Omit<WorkedRow, 'yard'>; readonly unit: 'lb' | 'kg' }) {
  const honey = row.honey === null ? null : row.honey / (unit === 'lb' ? gramsPerPound : 1000);
  return (
    <>
      <td className="number">{words.of(row.written, row.visits)}</td>
      <td className="number">{row.written === 0 ? missing : fixed(row.hours, 1)}</td>
      <td className="number">{row.estimate === null ? missing : estimateText(row)}</td>
      <td className="number">{number(row.miles)}</td>
      <td className="number">{row.colonies === null ? missing : fixed(row.colonies, 1)}</td>
      <td className="number">{perColonyText(row)}</td>
      <td className="number">{honey === null || row.estimate === null || row.estimate.range[0] === 0 ? missing : words.ranged(honey / row.estimate.hours, honey / row.estimate.range[1], honey / row.estimate.range[0])}</td>
    </>
  );
}

function perColonyText({ perColony, colonies, estimate }: Omit<WorkedRow, 'yard'>): string {
  return perColony === null || colonies === null || estimate === null ? missing : words.ranged(perColony, estimate.range[0] / colonies, estimate.range[1] / colonies);
}

function estimateText({ estimate }: Pick<WorkedRow, 'estimate'>): string {
  return estimate === null ? missing : words.estimateOf(estimate.hours, ...estimate.range);
}

function Ahead() {
  const [typed, setTyped] = useState('');
  const read = readMeasure(typed, { unit: null, own: ['colony', 'colonies', 'hive', 'hives'], least: 1, most: 20_000, whole: true, suchAs: '120' });
  const asked = read.ok ? read.value : undefined;
  const wrong = typed.trim() !== '' && asked === undefined;
  const { data, fault, stale } = useRead('worked.ahead', asked === undefined ? {} : { colonies: asked }, { keep: true });
  if (data === undefined) return <FaultNote fault={fault} />;
  return (
    <section className="section" aria-label={words.ahead(seasonName(data.season))}>
      <h2>{words.ahead(seasonName(data.season))}</h2>
      <Awaited stale={stale}>
        {data.months.every(({ need }) => need === null) ? <p className="soft">{words.aheadNone}</p> : <p className="sentence">{words.aheadSays(data.months)}</p>}
        <p className="soft">
          {words.aheadLine(data.colonies, data.living)} {data.own ? '' : words.aheadHouse}
        </p>
      </Awaited>
      <div className="choices">
        <label className="inline-choice">
          {words.colonyCount} <input type="text" inputMode="numeric" size={6} value={typed} placeholder={String(data.living)} aria-invalid={wrong || undefined} onChange={(event) => setTyped(event.target.value)} />
        </label>
        {wrong && !read.ok ? <span className="field-fault">{read.sentence}</span> : null}
      </div>
      <Awaited stale={stale}>
        <table className="tight" aria-label={words.ahead(seasonName(data.season))}>
          <thead>
            <tr>
              <th scope="col">{words.month}</th>
              <th scope="col" className="number">
                {words.need}
              </th>
              <th scope="col" className="number">
                {words.seasons}
              </th>
              <th scope="col" className="number">
                {words.driving}
              </th>
              <th scope="col" className="number">
                {words.have}
              </th>
              <th scope="col">{words.verdict}</th>
            </tr>
          </thead>
          <tbody>
            {data.months.map((one) => ({ ...one, few: isFew(one), asThen: fitsAsThen(one) })).map(({ month, need, driving, have, fits, few, asThen }) => (
              <tr key={month}>
                <th scope="row">
                  {words.monthName(month)} {month.slice(0, 4)}
                </th>
                <td className="number figure-range">{need === null ? missing : `${fixed(need.hours, 0)} ${need.range === null ? '' : words.needRange(...need.range)}`}</td>
                <td className="number">{need === null ? missing : need.seasons}</td>
                <td className="number">{need === null ? missing : fixed(driving, 0)}</td>
                <td className="number">{fixed(have, 0)}</td>
                <td className={(few ? !asThen : fits === 'short') ? 'needs' : undefined}>{few ? words.fitsAsThen(asThen) : words.fits[fits]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Awaited>
    </section>
  );
}

function Planned() {
  const { data, fault } = useRead('worked.planned', {});
  if (data === undefined) return <FaultNote fault={fault} />;
  const { rows, both } = data;
  return (
    <section className="section" aria-label={words.planned}>
      <h2>{words.planned}</h2>
      {rows.length === 0 ? <p className="soft">{words.plannedNone}</p> : null}
      {both.visits === 0 || both.planned === 0 ? null : <p className="sentence">{words.plannedSum(both.visits, spell(both.planned), spell(both.worked), `${fixed((100 * both.worked) / both.planned, 0)} %`)}</p>}
      {rows.length === 0 ? null : (
        <table className="tight narrow" aria-label={words.planned}>
          <thead>
            <tr>
              <th scope="col">{words.day}</th>
              <th scope="col">{words.yard}</th>
              <th scope="col" className="number">
                {words.plan}
              </th>
              <th scope="col" className="number">
                {words.work}
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.day} ${row.yard.id}`}>
                <td>{dayText(row.day)}</td>
                <th scope="row">{row.yard.name}</th>
                <td className="number">{spell(row.planned)}</td>
                <td className="number">{row.worked === null ? <span className="soft">{row.went ? words.noHours : words.notGone}</span> : spell(row.worked)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
