import { useId, useState } from 'react';
import { Link } from 'wouter';
import type { YardRow } from '#shared/contract/book.ts';
import type { TracedLot, TraceFrom } from '#shared/contract/lots.ts';
import { dayFromTyped, type DateOrder } from '#shared/days.ts';
import { seasonName } from '#shared/seasons.ts';
import type { MassUnit } from '#shared/units.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { counted, dayText, number } from '../../parts/format.ts';
import { lotAddress } from '../../parts/lotAddress.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { massFigure } from './honeyText.ts';
import { nearTo, tracedColony } from './tracedColony.ts';
import { words } from './words.ts';

interface TraceProps {
  readonly yards: readonly YardRow[];
  readonly seasons: readonly number[];
  readonly unit: MassUnit;
  readonly order: DateOrder;
}

const ways = ['colony', 'yard', 'day', 'treatment'] as const;
const mostOffered = 300;

/** From a colony, a yard, some days or a treatment forward to the lots, jars and sales that hold some of that honey. */
export function TraceSection({ yards, seasons, unit, order }: TraceProps) {
  const [by, setBy] = useState<(typeof ways)[number] | null>(null);
  const [typed, setTyped] = useState({ colony: '', yard: '', season: '', from: '', until: '', treatment: '' });
  const id = useId();
  const known = useRead('lots.traceable', {}, { enabled: by === 'colony' || by === 'treatment' });
  const colonies = known.data?.colonies ?? [];
  const change = (part: keyof typeof typed) => (value: string) => setTyped({ ...typed, [part]: value });
  const { colony, said } = tracedColony(colonies, typed.colony);
  const [from, until] = [dayFromTyped(typed.from, order), dayFromTyped(typed.until, order)];
  const yard = yards.find((one) => String(one.id) === typed.yard);
  const treatment = known.data?.treatments.find(({ entry }) => String(entry) === typed.treatment);
  const asked: TraceFrom | null =
    by === 'colony' && colony ? { by, colony: colony.id }
    : by === 'yard' && yard ? { by, yard: yard.id, season: typed.season === '' ? null : Number(typed.season) }
    : by === 'day' && from !== null && until !== null && from <= until ? { by, from, until }
    : by === 'treatment' && treatment ? { by, entry: treatment.entry }
    : null;
  const { data, fault } = useRead('lots.trace', { from: asked ?? { by: 'day', from: '2000-01-01', until: '2000-01-01' } }, { enabled: asked !== null });
  const select = (part: 'yard' | 'season' | 'treatment', label: string, none: string, options: readonly { readonly value: string; readonly text: string }[]) => (
    <div className={part === 'treatment' ? 'field honey-wide' : 'field'}>
      <label htmlFor={`${id}${part}`}>{label}</label>
      <select id={`${id}${part}`} value={typed[part]} onChange={(event) => change(part)(event.target.value)}>
        <option value="">{none}</option>
        {options.map(({ value, text }) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
    </div>
  );
  const text = (part: 'colony' | 'from' | 'until', label: string, list?: readonly string[]) => (
    <div className="field">
      <label htmlFor={`${id}${part}`}>{label}</label>
      <input id={`${id}${part}`} type="text" autoComplete="off" value={typed[part]} {...(list ? { list: `${id}${part}s` } : {})} onChange={(event) => change(part)(event.target.value)} />
      {list ? (
        <datalist id={`${id}${part}s`}>
          {list.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      ) : null}
    </div>
  );
  const near = nearTo(colonies, typed.colony).slice(0, mostOffered);
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.forward}</h2>
      <p>{words.forwardLine}</p>
      <div className="fields honey-trace">
        <div className="field">
          <label htmlFor={`${id}by`}>{words.by}</label>
          <select id={`${id}by`} value={by ?? ''} onChange={(event) => setBy(ways.find((one) => one === event.target.value) ?? null)}>
            <option value="">{words.choosePlease}</option>
            {ways.map((one) => (
              <option key={one} value={one}>
                {words.bys[one]}
              </option>
            ))}
          </select>
        </div>
        {by === 'colony' ? text('colony', words.colony, near.map(({ name }) => name)) : null}
        {by === 'yard' ? select('yard', words.yard, words.choosePlease, yards.map(({ id: key, code, name }) => ({ value: String(key), text: `${code} ${name}` }))) : null}
        {by === 'yard' ? select('season', words.season, words.anySeason, seasons.map((one) => ({ value: String(one), text: seasonName(one) }))) : null}
        {by === 'day' ? text('from', words.from) : null}
        {by === 'day' ? text('until', words.until) : null}
        {by === 'treatment' ? select('treatment', words.treatment, words.choosePlease, (known.data?.treatments ?? []).map(({ entry, words: treated }) => ({ value: String(entry), text: treated }))) : null}
      </div>
      <div role="status">
        {by === 'colony' && known.data && said !== null ? <p className="field-fault">{said}</p> : null}
        {by === 'treatment' && known.data?.treatments.length === 0 ? <p className="soft">{words.noTreatment}</p> : null}
        {by === 'day' && typed.from.trim() !== '' && typed.until.trim() !== '' && asked === null ? <p className="field-fault">{words.noDays}</p> : null}
        {asked !== null && data ? <p className="said">{data.sentence}</p> : null}
      </div>
      <FaultNote fault={asked === null ? undefined : fault} />
      {asked !== null && data ? (
        <>
          {data.lots.length === 0 ? null : <Traced lots={data.lots} unit={unit} />}
          {data.loose.length === 0 ? null : (
            <p>
              {`${words.looseThere(counted(data.loose.length, 'harvest', 'harvests'))} `}
              {data.loose.map(({ entry, day }, at) => (
                <span key={entry}>
                  {at > 0 ? ', ' : ''}
                  <Link href={`/entries/${entry}`}>{dayText(day)}</Link>
                </span>
              ))}
            </p>
          )}
        </>
      ) : null}
    </section>
  );
}

function Traced({ lots, unit }: { readonly lots: readonly TracedLot[]; readonly unit: MassUnit }) {
  const { shown, more } = useFirstRows(lots, words.forward);
  return (
    <>
      <div className="scroll" tabIndex={0} role="group" aria-label={words.forward}>
        <table className="tight honey-traced">
          <caption className="visually-hidden">{words.forward}</caption>
          <thead>
            <tr>
              <th scope="col">{words.lot}</th>
              <th scope="col">{words.via}</th>
              <th scope="col" className="number">{`${words.netOf}, ${unit}`}</th>
              <th scope="col">{words.filled}</th>
              <th scope="col">{words.sales}</th>
              <th scope="col" className="number">{`${words.inBulk}, ${unit}`}</th>
            </tr>
          </thead>
          <tbody>
            {shown.map(({ code, via, net, jars, sales, bulk }) => (
              <tr key={code}>
                <th scope="row">
                  <Link href={lotAddress(code)}>{code}</Link>
                </th>
                <td>{via === null ? <span className="soft">{words.direct}</span> : <Link href={lotAddress(via)}>{via}</Link>}</td>
                <td className="number">{massFigure(net, unit)}</td>
                <td>{jars.length === 0 ? '–' : jars.map((jar) => words.jarsOf(jar.words, number(jar.filled), number(jar.sold, 1))).join('; ')}</td>
                <td>
                  {sales.length === 0 ? '–' : null}
                  {sales.map(({ entry, day }, at) => (
                    <span key={entry}>
                      {at > 0 ? ', ' : ''}
                      <Link href={`/entries/${entry}`}>{dayText(day)}</Link>
                    </span>
                  ))}
                </td>
                <td className="number">{massFigure(bulk, unit)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {more}
    </>
  );
}
