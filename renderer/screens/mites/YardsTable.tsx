import type { YardId } from '#shared/brands.ts';
import type { MitesYard } from '#shared/contract/mites.ts';
import type { Day } from '#shared/days.ts';
import { dayShort, dayText, missing, number, percent } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { rateText } from './mitesText.ts';
import { words } from './words.ts';

interface YardsTableProps {
  readonly yards: readonly MitesYard[];
  readonly asOf: Day;
  readonly chosen: YardId;
  readonly onChoose: (yard: YardId) => void;
}

/** Yards down, what their counts say across; a yard is chosen for what stands below. */
export function YardsTable({ yards, asOf, chosen, onChoose }: YardsTableProps) {
  const note = useMarginNote();
  const { shown, more } = useFirstRows(yards, words.yards);
  const treats = [...new Set(yards.map(({ treat }) => treat))];
  return (
    <div className="scroll" tabIndex={0} role="group" aria-label={words.yards}>
      <table className="mites-yards">
        <caption className="visually-hidden">{words.yards}</caption>
        <thead>
          <tr>
            <th scope="col">{words.yard}</th>
            <th scope="col">{words.last}</th>
            <th scope="col" className="number">
              {words.washed}
            </th>
            <th scope="col" className="number">
              {words.rate}
            </th>
            <th scope="col" className="number">
              {treats.length === 1 ? words.above(number(treats[0], 2)) : words.aboveMixed}
            </th>
            <th scope="col" className="number">
              {words.more}
            </th>
            <th scope="col">{words.reaches}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((yard) => (
            <tr key={yard.id} className={yard.id === chosen ? 'mites-chosen' : ''} {...note(() => <YardNote yard={yard} />)}>
              <th scope="row">
                <button type="button" className="link" aria-pressed={yard.id === chosen} onClick={() => onChoose(yard.id)}>
                  {yard.code} {yard.name}
                </button>
              </th>
              <td>
                {yard.round === null ? missing : yard.round[0] === yard.round[1] ? dayShort(yard.round[1]) : `${dayShort(yard.round[0])}–${dayShort(yard.round[1])}`}
                {yard.speaks === 'now' ? null : <span className={yard.speaks === 'never' ? 'needs' : 'soft'}> {words.speaks[yard.speaks]}</span>}
              </td>
              <td className="number">{words.washedOf(yard.washed, yard.living)}</td>
              <td className="number figure-range">{yard.rate === null ? missing : rateText(yard.rate, yard.few)}</td>
              <td className="number">
                <Chance yard={yard} />
              </td>
              <td className="number">{yard.more === 0 ? '0' : yard.speaks === 'now' ? number(yard.more) : words.countAll(yard.more)}</td>
              <td>{reachesText(yard, asOf)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {more}
    </div>
  );
}

/** The chance with the word for it; a count that a treatment or time has overtaken says only what was so then. */
function Chance({ yard: { above, verdict, speaks, few, washed } }: { readonly yard: MitesYard }) {
  if (above === null) return <span className="soft">{washed === 1 ? words.oneColony : missing}</span>;
  if (few) return <span className="soft">{words.fewCounts}</span>;
  const chance = percent(above);
  if (speaks !== 'now') return <span className="soft">{`${chance} ${words.backThen}`}</span>;
  return (
    <>
      {chance} <span className={verdict === 'above' ? 'needs' : 'soft'}>{words.verdict[verdict]}</span>
    </>
  );
}

/** `20 Aug (now – 25 Oct)`: the day the count itself leads to, and those that its range leaves open. */
function reachesText({ projection, few }: MitesYard, asOf: Day): string {
  if (projection === null || few) return missing;
  const { reached, expected, earliest, latest } = projection;
  const named = (day: Day | null) => (day === null ? words.notWithinYear : day <= asOf ? words.now : dayShort(day));
  const main = reached ? words.there : expected === null ? words.notWithinYear : expected <= asOf ? words.reckonedSince(dayShort(expected)) : dayShort(expected);
  return reached && latest !== null && latest <= asOf ? main : `${main}\u2002(${named(earliest)} – ${named(latest)})`;
}

function YardNote({ yard }: { readonly yard: MitesYard }) {
  const { projection } = yard;
  return (
    <>
      <MarginPart heading={`${yard.code} ${yard.name}`}>
        <p>{words.noteRange(yard.washed, yard.basis)}</p>
        {yard.few ? <p>{words.noteFew}</p> : null}
        {yard.treatedSince === null ? null : <p>{words.noteTreated(yard.treatedSince.ingredient, dayText(yard.treatedSince.from))}</p>}
        {yard.speaks === 'old' ? <p>{words.noteOld}</p> : null}
        {yard.speaks === 'now' ? <p>{words.noteMore(yard.more)}</p> : null}
        {projection === null || yard.few || projection.reached ? null : <p>{words.noteProjection(dayText(projection.earliest), projection.latest === null ? words.notWithinYear : dayText(projection.latest))}</p>}
      </MarginPart>
      {yard.hot.length === 0 ? null : (
        <MarginPart heading={words.hot}>
          <ul>
            {yard.hot.map(({ id, label, rate, above }) => (
              <li key={id}>{words.hotLine(label, rateText(rate), percent(above))}</li>
            ))}
          </ul>
        </MarginPart>
      )}
      <MarginPart heading={words.noteFigure}>
        <p>{words.noteThreshold(number(yard.treat, 2), words.phases[yard.phase] ?? yard.phase)}</p>
        <p>{words.noteBrood[yard.brood]}</p>
        <RulesLink room="mites" />
      </MarginPart>
    </>
  );
}
