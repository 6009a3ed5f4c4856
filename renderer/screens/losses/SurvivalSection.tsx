import { useState } from 'react';
import type { Grouping, LossFrame, LossSurvival } from '#shared/contract/lossSections.ts';
import { groupings } from '#shared/contract/lossSections.ts';
import { firstShown } from '#shared/lossChoice.ts';
import { seasonName } from '#shared/seasons.ts';
import { Figure } from '../../charts/Figure.tsx';
import { IncidenceChart, IncidenceTable } from '../../charts/IncidenceChart.tsx';
import { SurvivalChart } from '../../charts/SurvivalChart.tsx';
import { SurvivalTable } from '../../charts/SurvivalTable.tsx';
import { useCalmRead } from '../../desk/useDesk.ts';
import { Awaited } from '../../parts/Awaited.tsx';
import { ColoniesBehind, useBehind } from '../../parts/ColoniesBehind.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { EndedSection } from './EndedSection.tsx';
import { PairsTable } from './PairsTable.tsx';
import { reviewWords as words } from './reviewWords.ts';
import { SurvivalGroupsTable } from './SurvivalGroupsTable.tsx';
import { survivalLines } from './survivalLines.ts';

/** Section 3: survival curves by a chosen grouping, their test, what else became of the colonies, and the ended ones. */
export function SurvivalSection({ frame }: { readonly frame: LossFrame }) {
  const [all, setAll] = useState(false);
  const [axis, setAxis] = useState<'winter' | 'start'>('winter');
  const [by, setBy] = useState<Grouping>('yard');
  const [unitedLost, setUnitedLost] = useState(false);
  const asked: LossSurvival['asked'] = { season: all ? null : frame.season, axis, by, united: unitedLost ? 'lost' : 'alive' };
  const { data, fault, stale } = useCalmRead('losses.survival', asked, { keep: true });
  const note = useMarginNote();
  return (
    <>
      <div className="choices survival-choices" {...note(<SurvivalNote />)}>
        <label className="inline-choice">
          {words.by}{' '}
          <select value={by} onChange={(event) => setBy(groupings.find((known) => known === event.target.value) ?? 'none')}>
            {groupings.map((known) => (
              <option key={known} value={known}>
                {words.groupings[known]}
              </option>
            ))}
          </select>
        </label>
        <label className="inline-choice">
          {words.countedFrom}{' '}
          <select value={axis} onChange={(event) => setAxis(event.target.value === 'start' ? 'start' : 'winter')}>
            <option value="winter">{words.sinceWinter(dayText(frame.winter.from))}</option>
            <option value="start">{words.sinceStart}</option>
          </select>
        </label>
        {axis === 'winter' && (
          <label className="inline-choice">
            {words.winters}{' '}
            <select value={all ? 'all' : 'one'} onChange={(event) => setAll(event.target.value === 'all')}>
              <option value="one">{words.thisWinter(seasonName(frame.season))}</option>
              <option value="all">{words.allWinters}</option>
            </select>
          </label>
        )}
        <label className="inline-choice">
          <input type="checkbox" checked={unitedLost} onChange={(event) => setUnitedLost(event.target.checked)} /> {words.unitedLost}
        </label>
      </div>
      <FaultNote fault={fault} />
      {data ? <SurvivalView key={`${data.asked.by} ${data.asked.axis} ${data.asked.season}`} data={data} stale={stale} /> : fault ? null : <p className="soft review-waiting">{words.reading}</p>}
      <EndedSection season={frame.season} />
    </>
  );
}

function SurvivalView({ data, stale }: { readonly data: LossSurvival; readonly stale: boolean }) {
  const behind = useBehind();
  const [chosen, setChosen] = useState<ReadonlySet<string>>(() => new Set(firstShown(data.groups)));
  const { asked, origin, groups, test, incidence } = data;
  const shownOrigin = asked.axis === 'winter' ? (origin ?? null) : null;
  const lines = survivalLines(data, chosen);
  const drawn = groups.filter(({ curve }) => curve !== null);
  const name = words.survivalName(asked.by === 'none' || groups.length === 0 ? null : words.groupings[asked.by]);
  const toggle = (key: string) => {
    const next = new Set(chosen);
    if (!next.delete(key)) next.add(key);
    setChosen(next);
  };
  return (
    <Awaited stale={stale}>
      <p className="sentence">
        {data.sentence} {test?.kind === 'made' || test?.kind === 'refused' ? test.sentence : ''}
      </p>
      {data.notes.length > 0 && (
        <div className="review-notes">
          {data.notes.map((note) => (
            <p key={note} className="small">
              {note}
            </p>
          ))}
        </div>
      )}
      {drawn.length > 1 && (
        <fieldset className="yard-picks no-print">
          <legend>{words.curvesShown}</legend>
          {drawn.map(({ key, label }) => (
            <label key={key}>
              <input type="checkbox" checked={chosen.has(key)} onChange={() => toggle(key)} /> {label}
            </label>
          ))}
        </fieldset>
      )}
      {lines.length > 0 && (
        <div className="figured review-figure">
          <Figure
            name={name}
            picture={(width) => <SurvivalChart lines={lines} origin={shownOrigin} since={asked.axis} width={width} height={chartHeight(lines.length)} />}
            table={<SurvivalTable lines={lines} origin={shownOrigin} caption={name} />}
          />
        </div>
      )}
      {data.all.curve === null && data.all.why !== null && data.all.why !== data.sentence && <p className="soft">{data.all.why}</p>}
      {data.all.colonies > 0 && <SurvivalGroupsTable data={data} behind={behind} />}
      <ColoniesBehind behind={behind} />
      {data.pairs > 0 && <PairsTable asked={asked} />}
      {incidence && (
        <section className="figured section" aria-label={words.incidence}>
          <h3>{words.incidence}</h3>
          <p className="sentence survival-sentence">{incidence.sentence}</p>
          <Figure
            name={words.incidenceName}
            picture={(width) => <IncidenceChart incidence={incidence} origin={shownOrigin} last={data.last} width={width} />}
            table={<IncidenceTable incidence={incidence} origin={shownOrigin} caption={words.incidenceName} />}
          />
        </section>
      )}
    </Awaited>
  );
}

/** More curves need more room between them. */
function chartHeight(lines: number): number {
  return 210 + 16 * Math.max(0, lines - 3);
}

function SurvivalNote() {
  return (
    <>
      <MarginPart heading={words.by}>
        <p>{words.survivalGroups}</p>
        <p className="soft">{words.rulesNote}</p>
        <RulesLink room="losses" />
      </MarginPart>
      <MarginPart heading={words.curvesHeading}>
        <p>{words.survivalHow}</p>
        <p>{words.survivalTest}</p>
        <p>{words.incidenceNote}</p>
        <p className="soft">{words.survivalMethod}</p>
      </MarginPart>
    </>
  );
}
