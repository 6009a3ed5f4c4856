import { useId, useState } from 'react';
import { Link } from 'wouter';
import { broodWords, type MitesYard, type TreatmentFitView } from '#shared/contract/mites.ts';
import type { MassUnit } from '#shared/units.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { EntryForm } from '../../parts/EntryForm.tsx';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { readHigh } from './mitesText.ts';
import { words } from './words.ts';

type Brood = (typeof broodWords)[number];
const abouts = ['temperature', 'supers', 'brood', 'flow', 'rotation'] as const;
const marks = { fits: '✓', 'does not fit': '✕', 'not known': '?' } as const;

/** Each treatment's needs against what is so in a yard, and the way to enter one. */
export function FitsSection({ yard }: { readonly yard: MitesYard }) {
  const { book, today } = useBook();
  const [typed, setTyped] = useState('');
  const [supers, setSupers] = useState<'on' | 'off' | null>(null);
  const [brood, setBrood] = useState<Brood | null>(null);
  const [entering, setEntering] = useState<TreatmentFitView | null>(null);
  const note = useMarginNote();
  const id = useId();
  const unit = book?.massUnit ?? 'lb';
  const high = readHigh(typed, unit);
  const { data, fault, stale } = useRead('mites.fits', { yard: yard.id, high: high.value, supers, brood }, { keep: true });
  const name = `${yard.code} ${yard.name}`;
  return (
    <section className="section mites-fits" aria-label={words.fits(name)}>
      <h2>{words.fits(name)}</h2>
      <p>{words.fitsLine}</p>
      <FaultNote fault={fault} />
      {data ? (
        <>
          <div className="caution">
            {data.cautions.map((caution) => (
              <p key={caution}>{caution}</p>
            ))}
          </div>
          <div className="fields mites-setting">
            <div className="field">
              <label htmlFor={`${id}high`}>{words.high(unit === 'kg' ? '°C' : '°F')}</label>
              <input id={`${id}high`} type="text" inputMode="decimal" autoComplete="off" value={typed} aria-invalid={high.says !== null} aria-describedby={`${id}high-says`} onChange={(event) => setTyped(event.target.value)} />
              <span id={`${id}high-says`} className={high.says === null ? 'soft small' : 'field-fault'}>
                {high.says ?? words.highUsual(degrees(data.setting.usualHigh, unit))}
              </span>
            </div>
            <div className="field">
              <label htmlFor={`${id}supers`}>{words.supers}</label>
              <select id={`${id}supers`} value={supers ?? ''} onChange={(event) => setSupers(event.target.value === 'on' ? 'on' : event.target.value === 'off' ? 'off' : null)}>
                <option value="">{words.supersRecord(data.setting.recordSupers)}</option>
                <option value="on">{words.supersOn}</option>
                <option value="off">{words.supersOff}</option>
              </select>
            </div>
            <div className="field">
              <label htmlFor={`${id}brood`}>{words.brood}</label>
              <select id={`${id}brood`} value={brood ?? ''} onChange={(event) => setBrood(broodWords.find((word) => word === event.target.value) ?? null)}>
                <option value="">{words.broodRecord(words.broodWord[data.setting.recordBrood])}</option>
                <option value="yes">{words.broodWord.yes}</option>
                <option value="no">{words.broodWord.no}</option>
              </select>
            </div>
          </div>
          <Awaited stale={stale}>
            <div className="scroll" tabIndex={0} role="group" aria-label={words.fits(name)}>
              <table className="tight mites-fit-table">
                <caption className="visually-hidden">{words.fits(name)}</caption>
                <thead>
                  <tr>
                    <th scope="col">{words.treatment}</th>
                    {abouts.map((about) => (
                      <th key={about} scope="col">
                        {words.about[about]}
                      </th>
                    ))}
                    <td />
                  </tr>
                </thead>
                <tbody>
                  {data.fits.map((fit) => (
                    <tr
                      key={fit.form}
                      {...note(
                        <MarginPart heading={fit.name}>
                          <p>{words.labelMargin}</p>
                          <RulesLink room="treatments" />
                        </MarginPart>,
                      )}
                    >
                      <th scope="row">
                        {fit.name}{' '}
                        <span className={fit.fits === 'does not fit' ? 'needs mites-verdict' : 'mites-verdict'}>{words.fit[fit.fits]}</span>
                      </th>
                      {abouts.map((about) => (
                        <Cell key={about} cell={fit.cells.find((one) => one.about === about)} unit={unit} />
                      ))}
                      <td>
                        <Entering>
                          <button type="button" className="link" onClick={() => setEntering(fit)}>
                            {words.enter}
                            <span className="visually-hidden"> ({fit.name})</span>
                          </button>
                        </Entering>
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          </Awaited>
          <p className="no-print">
            <Link href="/book/rules/treatments">{words.needs}</Link>
          </p>
          {entering && book && today ? (
            <Entering>
              <EntryForm
                key={entering.form}
                book={book}
                today={today}
                firstKind="treatment"
                given={{ yard: yard.code, active_ingredient: entering.ingredient }}
                cautioned
                onClose={() => setEntering(null)}
              />
            </Entering>
          ) : null}
        </>
      ) : null}
    </section>
  );
}

function Cell({ cell, unit }: { readonly cell: TreatmentFitView['cells'][number] | undefined; readonly unit: MassUnit }) {
  if (cell === undefined) return <td />;
  return (
    <td className={`mites-cell mites-${cell.fits.replaceAll(' ', '-')}`}>
      <strong>
        <span aria-hidden="true">{marks[cell.fits]}</span> {words.fit[cell.fits]}
      </strong>{' '}
      <span className="small">{inUnit(cell.reason, unit)}</span>
    </td>
  );
}

/** The desk speaks of °F; a book in kilograms reads °C. */
function inUnit(reason: string, unit: MassUnit): string {
  if (unit === 'lb') return reason;
  return reason.replaceAll(/(-?\d+(?:\.\d+)?)( to (-?\d+(?:\.\d+)?))? °F/g, (_all, from: string, _to, until: string | undefined) => (until === undefined ? `${celsius(Number(from))} °C` : `${celsius(Number(from))} to ${celsius(Number(until))} °C`));
}

function degrees(fahrenheit: number, unit: MassUnit): string {
  return unit === 'lb' ? `${number(fahrenheit)} °F` : `${celsius(fahrenheit)} °C`;
}

function celsius(fahrenheit: number): string {
  return number(((fahrenheit - 32) * 5) / 9).replace('-', '−');
}
