import { useId, useRef, useState, type FormEvent } from 'react';
import { Link, useLocation } from 'wouter';
import { longestNewLot, type HarvestLine, type LotLine } from '#shared/contract/lots.ts';
import type { EntryId } from '#shared/brands.ts';
import { dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import type { MassUnit } from '#shared/units.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { DayField } from '../../parts/DayField.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { counted, dayText } from '../../parts/format.ts';
import { lotAddress } from '../../parts/lotAddress.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { massFigure, massText, waterText } from './honeyText.ts';
import { words } from './words.ts';

interface NewLotProps {
  readonly loose: readonly HarvestLine[];
  readonly lots: readonly LotLine[];
  readonly nextCode: string;
  readonly unit: MassUnit;
  readonly order: DateOrder;
  readonly today: Day;
}

/** Harvests that are in no lot yet, and a new lot made of those that are chosen. */
export function NewLot({ loose, lots, nextCode, unit, order, today }: NewLotProps) {
  const { send, busy } = useWrite('lots.keep');
  const { say } = useNotice();
  const [, go] = useLocation();
  const [chosen, setChosen] = useState<ReadonlySet<EntryId>>(new Set());
  const [code, setCode] = useState(nextCode);
  const [typedDay, setTypedDay] = useState<string>(today);
  const [faults, setFaults] = useState<{ readonly code?: string; readonly day?: string; readonly harvests?: string }>({});
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const codeField = useRef<HTMLInputElement>(null);
  const id = useId();
  const { shown, more } = useFirstRows(loose, words.loose);
  const own = loose.filter(({ entry }) => chosen.has(entry));
  const net = own.reduce((sum, one) => sum + one.net, 0);
  const day = dayFromTyped(typedDay, order);
  const name = code.trim();

  const choose = (entry: EntryId, on: boolean) => {
    const next = new Set(chosen);
    if (on) next.add(entry);
    else next.delete(entry);
    setChosen(next);
    setFaults({});
  };
  const chooseAll = () => {
    setChosen(own.length === loose.length ? new Set() : new Set(loose.map(({ entry }) => entry)));
    setFaults({});
  };
  const make = async (event: FormEvent) => {
    event.preventDefault();
    if (busy) return;
    setFault(undefined);
    const known = lots.some((lot) => lot.code.toLowerCase() === name.toLowerCase());
    const wrong = {
      ...(name === '' || [...name].length > longestNewLot ? { code: words.must.code } : known ? { code: words.must.known } : {}),
      ...(day === null ? { day: words.must.day } : {}),
      ...(own.length === 0 ? { harvests: words.must.harvests } : {}),
    };
    setFaults(wrong);
    if (day === null || Object.keys(wrong).length > 0) {
      if ('code' in wrong) codeField.current?.focus();
      return;
    }
    const answer = await send({ lot: name, day, act: { what: 'made', harvests: own.map(({ entry }) => entry) } });
    if (!answer.ok) return setFault(answer);
    say(answer.value.sentence);
    go(lotAddress(name));
  };
  return (
    <form className="section honey-form" aria-label={words.newLot} onSubmit={(event) => void make(event)} noValidate>
      <h2>{words.loose}</h2>
      <p>{words.looseLine}</p>
      <table className="tight">
        <caption className="visually-hidden">{words.loose}</caption>
        <thead>
          <tr>
            <th scope="col">
              <button type="button" className="link" onClick={chooseAll}>
                {own.length === loose.length ? words.chooseNone : words.chooseAll}
              </button>
            </th>
            {[words.entry, words.yard, words.colony].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
            {[`${words.gross}, ${unit}`, `${words.net}, ${unit}`, words.water].map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map(({ entry, day: on, yardName, label, gross, net: mass, moisture }) => (
            <tr key={entry}>
              <td>
                <input type="checkbox" aria-label={words.choose(`${dayText(on)}, ${label ?? yardName}`)} checked={chosen.has(entry)} onChange={(event) => choose(entry, event.target.checked)} />
              </td>
              <td>
                <Link href={`/entries/${entry}`}>{dayText(on)}</Link>
              </td>
              <td>{yardName}</td>
              <td>{label ?? <span className="soft">{words.together}</span>}</td>
              <td className="number">{massFigure(gross, unit)}</td>
              <td className="number">{massFigure(mass, unit)}</td>
              <td className="number">{waterText(moisture)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {more}
      <p role="status" className={faults.harvests === undefined ? 'said' : 'field-fault'}>
        {faults.harvests ?? (own.length === 0 ? words.noneChosen : words.chosen(counted(own.length, 'harvest', 'harvests'), massText(net, unit)))}
      </p>
      <div className="fields">
        <div className="field">
          <label htmlFor={`${id}code`}>{words.code}</label>
          <input ref={codeField} id={`${id}code`} type="text" autoComplete="off" value={code} aria-invalid={faults.code !== undefined} aria-describedby={`${id}code-says`} onChange={(event) => setCode(event.target.value)} />
          <span id={`${id}code-says`} className="field-fault">
            {faults.code}
          </span>
        </div>
        <DayField label={words.day} name="day" value={typedDay} today={today} order={order} fault={faults.day ?? null} onChange={setTypedDay} />
      </div>
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" className="main" disabled={busy}>
          {words.make}
        </button>
      </div>
    </form>
  );
}
