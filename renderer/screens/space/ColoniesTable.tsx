import { useMemo } from 'react';
import { Link } from 'wouter';
import type { SpaceColony, SpaceList, SpaceYard } from '#shared/contract/space.ts';
import { ColoniesSection } from '../../parts/ColoniesSection.tsx';
import { dayText, missing } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { SourcesPart } from '../queens/SourcesPart.tsx';
import { beesText, mostUrgentFirst, nextLookText, riskText, roomText, seenText, shareText, wantsSomething, waysText } from './spaceText.ts';
import { words } from './words.ts';

/** Colonies, the most urgent first or as they stand; the margin says of each what speaks for it and by which numbers. */
export function ColoniesTable({ list, yards }: { readonly list: SpaceList; readonly yards: readonly SpaceYard[] }) {
  const note = useMarginNote();
  const [all, urgent] = useMemo(() => {
    const own = yards.flatMap(({ colonies }) => colonies);
    return [own, mostUrgentFirst(own.filter(wantsSomething))];
  }, [yards]);
  return (
    <ColoniesSection
      title={words.colonies}
      only={words.only}
      none={words.onlyNone}
      rowsOf={(only) => (only ? urgent : all)}
      head={
        <>
          <th scope="col">{words.colony}</th>
          {[words.beesFrames, words.share, words.seen].map((head) => (
            <th key={head} scope="col" className="number">
              {head}
            </th>
          ))}
          <th scope="col">{words.room}</th>
          <th scope="col">{words.risk}</th>
          <th scope="col" className="number">
            {words.nextLook}
          </th>
          <th scope="col">{words.split}</th>
        </>
      }
      row={(colony) => (
        <tr key={colony.id} {...note(() => <ColonyNote colony={colony} list={list} />)}>
          <th scope="row">
            <Link href={`/colonies/${colony.id}`}>{colony.label}</Link>
          </th>
          <td className="number">{beesText(colony)}</td>
          <td className="number">{shareText(colony)}</td>
          <td className="number">{seenText(colony, list.asOf)}</td>
          <td className={colony.need.say === 'add' ? 'needs' : undefined}>{roomText(colony)}</td>
          <td className={colony.risk?.level === 'high' ? 'needs' : undefined}>{riskText(colony)}</td>
          <td className={colony.risk?.level === 'high' && colony.risk.nextLook < list.asOf ? 'number needs' : 'number'}>{nextLookText(colony, list.asOf)}</td>
          <td>{colony.split === null ? missing : words.maySplitNow}</td>
        </tr>
      )}
    />
  );
}

function ColonyNote({ colony: { id, label, need, risk, split }, list }: { readonly colony: SpaceColony; readonly list: SpaceList }) {
  const behind = new Set(['space.full', 'space.watch', 'space.lookHolds', ...(risk === null ? [] : ['space.risk.some', 'space.risk.high', ...risk.reasons.map(({ rule }) => rule)])]);
  return (
    <>
      <MarginPart heading={words.why(label)}>
        <p>{need.reason}</p>
        {need.rests === null ? null : <p className="soft small">{words.restsOn(dayText(need.rests.day))}</p>}
        {split === null ? null : <p>{words.splitNote(split.reason, waysText(list))}</p>}
        {risk === null ? <p className="soft">{words.noRisk}</p> : null}
        <p>
          <Link href={`/colonies/${id}`}>{words.openColony}</Link>
        </p>
      </MarginPart>
      {risk === null ? null : (
        <MarginPart heading={words.riskHead(words.level[risk.level], risk.points)}>
          <ul className="rules">
            {risk.reasons.map(({ rule, words: said, points }) => (
              <li key={rule}>{words.points(said, points)}</li>
            ))}
            {risk.unknown.map((said) => (
              <li key={said} className="soft">
                {words.notTold(said)}
              </li>
            ))}
          </ul>
          <p className="soft small">{risk.lastLook === null ? words.neverLooked : words.lastLook(dayText(risk.lastLook))}</p>
        </MarginPart>
      )}
      <SourcesPart sources={list.sources.filter(({ key }) => behind.has(key))} room="space" />
    </>
  );
}
