import { useId } from 'react';
import { Link } from 'wouter';
import type { LotPage, TreatmentLine } from '#shared/contract/lots.ts';
import type { MassUnit } from '#shared/units.ts';
import { counted, dayText, missing, number } from '../../parts/format.ts';
import { lotAddress } from '../../parts/lotAddress.ts';
import { useMarginNote, MarginPart } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { massFigure, massText, waterText } from './honeyText.ts';
import { lotWords as words } from './lotWords.ts';

interface PartProps {
  readonly page: LotPage;
  readonly unit: MassUnit;
}

/** From the lot back: its harvests, the colonies behind them, and what those were treated with. */
export function LotOrigin({ page, unit }: PartProps) {
  return (
    <section className="section honey-page" aria-label={words.origin}>
      <h2>{words.origin}</h2>
      {page.cameFrom.length === 0 ? null : (
        <p>
          {`${words.pouredIn}: `}
          {page.cameFrom.map(({ code, day, mass }, at) => (
            <span key={`${code} ${at}`}>
              {at > 0 ? '; ' : ''}
              <Link href={lotAddress(code)}>{code}</Link>
              {`, ${massText(mass, unit)}, ${dayText(day)}`}
            </span>
          ))}
        </p>
      )}
      <Harvests page={page} unit={unit} />
      <Colonies page={page} />
      <Treatments page={page} />
    </section>
  );
}

function Harvests({ page, unit }: PartProps) {
  const { shown, more } = useFirstRows(page.harvests, words.harvests);
  const poured = page.harvests.some(({ via }) => via !== null);
  if (page.harvests.length === 0) return null;
  return (
    <>
      <div className="scroll" tabIndex={0} role="group" aria-label={words.harvests}>
        <table className="tight">
          <caption>
            <h3>{words.harvests}</h3>
          </caption>
          <thead>
            <tr>
              {[words.day, words.yard, words.colony].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
              {[`${words.full}, ${unit}`, `${words.empty}, ${unit}`, `${words.net}, ${unit}`, words.water].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              {poured ? <th scope="col">{words.via}</th> : null}
            </tr>
          </thead>
          <tbody>
            {shown.map(({ entry, day, yard, yardName, colony, label, gross, tare, net, moisture, via }) => (
              <tr key={entry}>
                <th scope="row">
                  <Link href={`/entries/${entry}`}>{dayText(day)}</Link>
                </th>
                <td>{yard === null ? yardName : <Link href={`/yards/${yard}`}>{yardName}</Link>}</td>
                <td>{colony === null ? <span className="soft">{words.together}</span> : <Link href={`/colonies/${colony}`}>{label}</Link>}</td>
                <td className="number">{massFigure(gross, unit)}</td>
                <td className="number">{massFigure(tare, unit)}</td>
                <td className="number">{massFigure(net, unit)}</td>
                <td className="number">{waterText(moisture)}</td>
                {poured ? <td>{via === null ? <span className="soft">{words.direct}</span> : <Link href={lotAddress(via)}>{via}</Link>}</td> : null}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {more}
    </>
  );
}

function Colonies({ page }: { readonly page: LotPage }) {
  const byYard = [...Map.groupBy(page.colonies, ({ yard }) => yard)];
  if (page.colonies.length === 0) return null;
  return (
    <>
      <h3>{words.colonies(counted(page.colonies.length, 'colony', 'colonies'))}</h3>
      <ul className="lines honey-colonies">
        {byYard.map(([yard, own]) => (
          <li key={yard}>
            <span>{yard}</span>
            <span>
              {own.map(({ id, name }, at) => (
                <span key={id}>
                  {at > 0 ? (own.some((one) => one.name !== one.label) ? '; ' : ', ') : ''}
                  <Link href={`/colonies/${id}`}>{name}</Link>
                </span>
              ))}
              {own.some(({ together }) => together) ? <span className="soft"> {words.coloniesTogether}</span> : null}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

function Treatments({ page }: { readonly page: LotPage }) {
  const note = useMarginNote();
  const heading = useId();
  const { shown, more } = useFirstRows(page.treatments, words.treatments);
  return (
    <>
      <h3 id={heading}>{words.treatments}</h3>
      <p>{page.treatmentSentence}</p>
      {page.treatments.length === 0 ? null : (
        <>
          <p className="caution">{words.treatmentLaw}</p>
          <div className="scroll" tabIndex={0} role="group" aria-labelledby={heading}>
            <table className="tight" aria-labelledby={heading}>
              <thead>
                <tr>
                  {[words.given, words.off, words.ingredient, words.yard].map((head) => (
                    <th key={head} scope="col">
                      {head}
                    </th>
                  ))}
                  <th scope="col" className="number">
                    {words.treated}
                  </th>
                  <th scope="col">{words.supers}</th>
                  <th scope="col" className="number">
                    {words.days}
                  </th>
                </tr>
              </thead>
              <tbody>
                {shown.map((one) => (
                  <tr key={one.entry} {...note(() => <TreatmentNote treatment={one} />)}>
                    <th scope="row">
                      <Link href={`/entries/${one.entry}`}>{dayText(one.day)}</Link>
                    </th>
                    <td>{one.until === null ? <span className="soft">{words.offUnknown}</span> : dayText(one.until)}</td>
                    <td>{one.ingredient}</td>
                    <td>{one.yard}</td>
                    <td className="number">{number(one.colonies.length)}</td>
                    <td className={one.supersOn && !one.afterHarvest ? 'needs' : undefined}>{supersText(one)}</td>
                    <td className="number">{daysText(one)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          {more}
        </>
      )}
    </>
  );
}

function TreatmentNote({ treatment }: { readonly treatment: TreatmentLine }) {
  const groups = [...Map.groupBy(treatment.colonies, ({ supers }) => supers)];
  return (
    <MarginPart heading={words.treatments}>
      <p>{treatment.sentence}</p>
      {groups.map(([supers, own]) => (
        <p key={supers}>{`${supers}: ${own.map(({ label }) => label).join(', ')}`}</p>
      ))}
      <p>{words.daysHelp}</p>
    </MarginPart>
  );
}

function supersText({ supersOn, colonies }: TreatmentLine): string {
  if (!supersOn) return words.supersOff;
  return colonies.every(({ supers }) => supers !== 'supers off') ? words.supersOn : words.supersMixed;
}

function daysText({ daysBefore, afterHarvest }: TreatmentLine): string {
  if (afterHarvest) return words.after;
  if (daysBefore === null) return missing;
  return daysBefore < 0 ? words.stillOn : number(daysBefore);
}
