import { Fragment, useState } from 'react';
import type { LossFactors, RiskFactor, RiskGroup } from '#shared/contract/lossFactors.ts';
import { missing, pFigure, rate, ratio } from '#shared/figures.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { BehindFigure, FigureButton, sameAsked, type Asked } from './BehindFigure.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { factorWords as words } from './factorWords.ts';
import { TogetherPart } from './TogetherPart.tsx';
import type { Scope } from './useFactors.ts';
import { YardOrder } from './YardOrder.tsx';

export interface FactorsSectionProps {
  readonly found: LossFactors;
  readonly scope: Scope;
  readonly onScope: (scope: Scope) => void;
}

/** What lost and living colonies went into the winter with: group by group, yards in order, and all held beside each other. */
export function FactorsSection({ found, scope, onScope }: FactorsSectionProps) {
  const note = useMarginNote();
  const winters = found.winters.length;
  const [atRisk, lost] = [found.winters.reduce((sum, one) => sum + one.atRisk, 0), found.winters.reduce((sum, one) => sum + one.lost, 0)];
  return (
    <div className="factors">
      <div className="choices no-print" {...note(<HowCompared />)}>
        <label className="inline-choice">
          {words.compare}{' '}
          <select value={scope} onChange={(event) => onScope(event.target.value === 'all' ? 'all' : 'season')}>
            <option value="season">{words.thisSeason}</option>
            <option value="all">{words.allSeasons(found.scope === 'all' ? winters : 0)}</option>
          </select>
        </label>
      </div>
      {winters === 0 ? <p className="soft">{words.noWinters}</p> : <p className="soft small">{words.base(winters, atRisk, lost, found.leftOut)}{found.moved > 0 && ` ${words.moved(found.moved)}`}</p>}
      {found.sentences.map((sentence) => (
        <p key={sentence} className="sentence factor-sentence">
          {sentence}
        </p>
      ))}
      {atRisk > 0 && (
        <>
          <RiskTable found={found} />
          <YardOrder found={found} />
          <TogetherPart parts={found.together} />
        </>
      )}
    </div>
  );
}

function RiskTable({ found }: { readonly found: LossFactors }) {
  const [open, setOpen] = useState<Asked | null>(null);
  const toggle = (asked: Asked) => setOpen(sameAsked(open, asked) ? null : asked);
  return (
    <div className="scroll" tabIndex={0} role="group" aria-label={words.table}>
      <table className="tight risk-table">
        <caption className="visually-hidden">{words.table}</caption>
        <thead>
          <tr>
            <th scope="col">{words.group}</th>
            <th scope="col" className="number">{words.lostOf}</th>
            {found.tests === 0 ? (
              <th scope="col" colSpan={3}>{words.compared}</th>
            ) : (
              <>
                <th scope="col" className="number">{words.ratio}</th>
                <th scope="col">{words.difference}</th>
                <th scope="col" className="number">{words.chance}</th>
              </>
            )}
          </tr>
        </thead>
        {found.factors.filter(({ groups, unknown }) => groups.length > 0 || unknown !== null).map((factor) => (
          <FactorLines key={factor.key} found={found} factor={factor} open={open} onToggle={toggle} />
        ))}
      </table>
    </div>
  );
}

interface LineProps {
  readonly found: LossFactors;
  readonly factor: RiskFactor;
  readonly open: Asked | null;
  readonly onToggle: (asked: Asked) => void;
}

function FactorLines({ found, factor, open, onToggle }: LineProps) {
  const { shown, more } = useFirstRows(factor.groups, factor.name);
  return (
    <tbody>
      <tr className="risk-factor">
        <th scope="rowgroup" colSpan={5}>{factor.name}</th>
      </tr>
      {shown.map((group) => (
        <GroupLine key={group.key} found={found} factor={factor} group={group} open={open} onToggle={onToggle} />
      ))}
      {more !== null && (
        <tr className="no-print">
          <td colSpan={5}>{more}</td>
        </tr>
      )}
      {factor.unknown !== null && <UnknownLine found={found} factor={factor} unknown={factor.unknown} open={open} onToggle={onToggle} />}
    </tbody>
  );
}

function GroupLine({ found, factor, group, open, onToggle }: LineProps & { readonly group: RiskGroup }) {
  const note = useMarginNote();
  const asked: Asked = { factor: factor.key, group: group.key };
  const isOpen = sameAsked(open, asked);
  const out = group.pHolm !== null && group.pHolm < 0.05;
  return (
    <Fragment>
      <tr className={out ? 'risk-out' : undefined} {...note(<GroupNote found={found} factor={factor} group={group} />)}>
        <th scope="row">
          {group.name}
          {out && <span className="needs risk-word"> {words.standsOut}</span>}
        </th>
        <td className="number">
          <FigureButton text={rate(group.lost, group.atRisk, group.wilson)} name={`${factor.name}, ${group.name}`} open={isOpen} onToggle={() => onToggle(asked)} />
        </td>
        {group.p === null ? (
          <td colSpan={3} className="soft">{short(group)}</td>
        ) : (
          <>
            <td className="number">{group.ratio === null ? missing : `${ratio(group.ratio.value)}  (${ratio(group.ratio.range[0])}–${ratio(group.ratio.range[1])})${group.ratio.half ? ' *' : ''}`}</td>
            <td className="risk-difference">{brief(group.differenceWords)}</td>
            <td className="number">{pFigure(group.pHolm)}</td>
          </>
        )}
      </tr>
      {isOpen && <OpenRow asked={asked} found={found} />}
    </Fragment>
  );
}

function UnknownLine({ found, factor, unknown, open, onToggle }: LineProps & { readonly unknown: NonNullable<RiskFactor['unknown']> }) {
  const asked: Asked = { factor: factor.key, group: null };
  const isOpen = sameAsked(open, asked);
  return (
    <Fragment>
      <tr className="soft">
        <th scope="row">{unknown.name}</th>
        <td className="number">
          <FigureButton text={rate(unknown.lost, unknown.atRisk, unknown.wilson)} name={`${factor.name}, ${unknown.name}`} open={isOpen} onToggle={() => onToggle(asked)} />
        </td>
        <td colSpan={3}>{words.none}</td>
      </tr>
      {isOpen && <OpenRow asked={asked} found={found} />}
    </Fragment>
  );
}

function OpenRow({ asked, found }: { readonly asked: Asked; readonly found: LossFactors }) {
  return (
    <tr>
      <td colSpan={5}>
        <BehindFigure asked={asked} season={found.season} scope={found.scope} />
      </td>
    </tr>
  );
}

/** The head of the column says the rest. */
function brief(words: string | null): string {
  return words?.replace('of 100 colonies, ', '').replace('about ', '').replace(' lost', '') ?? missing;
}

function short({ why }: RiskGroup): string {
  if (why === null) return '';
  return why.startsWith('Too few') ? words.few : why.startsWith('The other side') ? words.other : words.none;
}

function GroupNote({ found, factor, group }: { readonly found: LossFactors; readonly factor: RiskFactor; readonly group: RiskGroup }) {
  return (
    <>
      <MarginPart heading={`${factor.name}, ${group.name}`}>
        <p>{words.noteCount(group.lost, group.atRisk)} {words.noteRest(group.restLost, group.restAtRisk)}</p>
        {group.why !== null && <p>{group.why}</p>}
        {group.differenceWords !== null && <p className="sentence">{`${group.differenceWords.charAt(0).toUpperCase()}${group.differenceWords.slice(1)}.`}</p>}
      </MarginPart>
      {group.p !== null && (
        <MarginPart heading={words.how}>
          {group.ratio?.half && <p>{words.noteHalf}</p>}
          <p>{words.noteRatio}</p>
          <p>{words.noteDifference}</p>
          {group.odds !== null && <p>{words.noteOdds(group.odds.value === null ? words.noUpper : ratio(group.odds.value), ratio(group.odds.range[0]), group.odds.range[1] === null ? words.noUpper : ratio(group.odds.range[1]))}</p>}
          <p>{(group.approximate ? words.noteRough : words.noteP)(pFigure(group.p), found.tests)}</p>
        </MarginPart>
      )}
    </>
  );
}

function HowCompared() {
  return (
    <MarginPart heading={words.how}>
      {words.howText.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <p className="soft">{words.minimum}</p>
      <RulesLink room="losses" />
    </MarginPart>
  );
}
