import { Link } from 'wouter';
import type { StoresColony, StoresYard } from '#shared/contract/stores.ts';
import type { MassUnit } from '#shared/units.ts';
import { ColoniesSection } from '../../parts/ColoniesSection.tsx';
import { dayShort, dayText, dayTight, missing, number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { massFigure, todoText, wantsSomething } from './storesText.ts';
import { words } from './words.ts';

/** Colonies in the order they stand in; the margin says of each what its figure rests on. */
export function ColoniesTable({ yards, unit }: { readonly yards: readonly StoresYard[]; readonly unit: MassUnit }) {
  const note = useMarginNote();
  const all = yards.flatMap(({ colonies }) => colonies);
  return (
    <ColoniesSection
      title={words.colonies}
      only={words.only}
      none={words.onlyNone}
      rowsOf={(only) => (only ? all.filter(wantsSomething) : all)}
      head={
        <>
          <th scope="col">{words.colony}</th>
          <th scope="col" className="number">{`${words.told}, ${unit}`}</th>
          <th scope="col" className="number">
            {words.on}
          </th>
          <th scope="col" className="number">
            {words.days}
          </th>
          <th scope="col" className="number">{`${words.fed}, ${unit}`}</th>
          <th scope="col" className="number">{`${words.reckoned}, ${unit}`}</th>
          <th scope="col" className="number">{`${words.target}, ${unit}`}</th>
          <th scope="col">{words.todo}</th>
        </>
      }
      row={(colony) => (
        <tr key={colony.id} {...note(() => <ColonyNote colony={colony} />)}>
          <th scope="row">
            <Link href={`/colonies/${colony.id}`}>{colony.label}</Link>
          </th>
          <td className="number">{massFigure(colony.told?.grams ?? null, unit)}</td>
          <td className="number">{colony.told === null ? missing : colony.told.age > 300 ? dayTight(colony.told.day) : dayShort(colony.told.day)}</td>
          <td className="number">{number(colony.told?.age)}</td>
          <td className="number">{colony.told === null || colony.fed.times === 0 ? missing : colony.fed.grams === 0 ? '?' : massFigure(colony.fed.grams, unit, 0)}</td>
          <td className="number">{massFigure(colony.reckoned, unit)}</td>
          <td className="number">{massFigure(colony.target, unit)}</td>
          <td className={colony.say === 'feed' ? 'needs' : undefined}>{todoText(colony, unit)}</td>
        </tr>
      )}
    />
  );
}

function ColonyNote({ colony }: { readonly colony: StoresColony }) {
  return (
    <MarginPart heading={`${colony.label}: ${words.why.toLowerCase()}`}>
      <p>{colony.reason}</p>
      {colony.rests === null ? null : <p className="soft small">{words.restsOn(words.kinds[colony.rests.kind] ?? colony.rests.kind, dayText(colony.rests.day))}</p>}
      {colony.supers === null ? null : <p>{colony.supers.reason}</p>}
      <p>
        <Link href={`/colonies/${colony.id}`}>{words.openColony}</Link>
      </p>
    </MarginPart>
  );
}
