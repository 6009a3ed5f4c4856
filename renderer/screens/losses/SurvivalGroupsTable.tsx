import type { LossSurvival, SurvivalGroup } from '#shared/contract/lossSections.ts';
import { BehindFigure, type Behind } from '../../parts/ColoniesBehind.tsx';
import { fixed, missing, number, percentRange, signed } from '#shared/figures.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { fewColonies } from '#shared/lossChoice.ts';
import { reviewWords as words } from './reviewWords.ts';
import { words as lossWords } from './words.ts';

/** The groups in figures: counts that open their colonies, what is alive at the end, and the mean days all groups can be compared by. */
export function SurvivalGroupsTable({ data, behind }: { readonly data: LossSurvival; readonly behind: Behind }) {
  const { groups, all, tau, reference, asked, test } = data;
  const note = useMarginNote();
  const compared = groups.some(({ difference }) => difference !== null);
  const median = [...groups, all].some((group) => group.median !== null);
  const referenceName = groups.find(({ key }) => key === reference)?.label ?? '';
  const line = (group: SurvivalGroup, label: string) => (
    <tr key={group.key} {...note(<GroupNote group={group} label={label} data={data} />)}>
      <th scope="row">{label}</th>
      <td className="number">
        <Count data={data} behind={behind} group={group} label={label} part="all" />
      </td>
      <td className="number">
        <Count data={data} behind={behind} group={group} label={label} part="lost" />
      </td>
      <td className="number">
        {group.colonies > 0 && group.colonies < fewColonies && <span className="rate-few">{lossWords.few}</span>}
        {endText(group)}
      </td>
      {tau !== null && <td className="number">{daysText(group.mean)}</td>}
      {tau !== null && compared && <td className="number">{group.key === reference ? '0' : daysText(group.difference, true)}</td>}
      {median && <td className="number">{group.median === null ? missing : number(group.median.value)}</td>}
    </tr>
  );
  return (
    <div className="scroll groups" tabIndex={0} role="group" aria-label={words.groupsTable}>
      <table className="tight">
        <caption className="visually-hidden">{words.groupsTable}</caption>
        <thead>
          <tr>
            <th scope="col">{words.group}</th>
            <th scope="col" className="number">
              {asked.axis === 'winter' && asked.season === null ? words.colonyWinters : words.colonies}
            </th>
            <th scope="col" className="number">
              {words.lost}
            </th>
            <th scope="col" className="number">
              {words.aliveAtEnd}
            </th>
            {tau !== null && (
              <th scope="col" className="number">
                {words.meanDays(Math.round(tau))}
              </th>
            )}
            {tau !== null && compared && (
              <th scope="col" className="number">
                {words.lessReference(referenceName)}
              </th>
            )}
            {median && (
              <th scope="col" className="number">
                {words.medianDay}
              </th>
            )}
          </tr>
        </thead>
        <tbody>{groups.map((group) => line(group, group.label))}</tbody>
        <tfoot>{line(all, words.together)}</tfoot>
      </table>
      {test?.kind === 'made' && <p className="soft small after-table">{words.testName(fixed(test.chiSquare, 2), test.df, test.p < 0.0001 ? '< 0.0001' : fixed(test.p, 4))}</p>}
    </div>
  );
}

function Count({ data, behind, group, label, part }: { readonly data: LossSurvival; readonly behind: Behind; readonly group: SurvivalGroup; readonly label: string; readonly part: 'all' | 'lost' }) {
  const count = part === 'all' ? group.colonies : group.losses;
  if (count === 0) return '0';
  return (
    <BehindFigure behind={behind} title={words.groupTitle(label, part)} selector={{ kind: 'survival', asked: data.asked, group: group.key, part }}>
      {number(count)}
    </BehindFigure>
  );
}

/** "71 (64–77)"; without a loss the curve is at 100 and has no band. */
function endText({ curve }: SurvivalGroup): string {
  if (curve === null) return missing;
  const alive = curve.survival.at(-1);
  if (alive === undefined) return '100';
  const [low, high] = [curve.low.at(-1) ?? null, curve.high.at(-1) ?? null];
  return `${number(alive * 100)}${low === null || high === null ? '' : ` ${percentRange([low, high])}`}`;
}

function daysText(days: SurvivalGroup['mean'], withSign = false): string {
  if (days === null) return missing;
  const of = (value: number) => (withSign ? signed(value) : number(Math.round(value)));
  const range = days.low === null || days.high === null ? '' : ` (${of(days.low)} to ${of(days.high)})`;
  return `${of(days.value)}${range}`;
}

function GroupNote({ group, label, data }: { readonly group: SurvivalGroup; readonly label: string; readonly data: LossSurvival }) {
  return (
    <MarginPart heading={label}>
      <p>{words.lostOf(group.losses, group.colonies)}</p>
      {group.why !== null && <p>{group.why}</p>}
      {data.tau !== null && group.mean !== null && <p>{group.mean.low === null ? words.meanNoRange : words.meanNote(Math.round(data.tau))}</p>}
      {group.difference !== null && <p>{words.differenceNote}</p>}
      {group.median === null && group.curve !== null && <p>{words.medianNot}</p>}
    </MarginPart>
  );
}
