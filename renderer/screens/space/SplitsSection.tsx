import { useId } from 'react';
import { Link } from 'wouter';
import type { SpaceList, SpaceYard } from '#shared/contract/space.ts';
import { monthDayInWords } from '#shared/days.ts';
import { dayShort, dayText, number } from '../../parts/format.ts';
import { useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { SourcesPart } from '../queens/SourcesPart.tsx';
import { riskText, splitsOpen } from './spaceText.ts';
import { words } from './words.ts';

const behind = new Set(['space.split.bees', 'space.split.brood', 'space.split.from', 'space.frost', 'space.split.weeks', 'space.lookHolds']);

/** Which colonies may be split, and the last day of each way for the place. */
export function SplitsSection({ list, yards }: { readonly list: SpaceList; readonly yards: readonly SpaceYard[] }) {
  const heading = useId();
  const note = useMarginNote();
  const rows = yards.flatMap(({ colonies }) => colonies.flatMap((colony) => (colony.split === null ? [] : [{ colony, split: colony.split }]))).toSorted((a, b) => (b.colony.risk?.points ?? 0) - (a.colony.risk?.points ?? 0) || b.split.bees - a.split.bees);
  const { shown, more } = useFirstRows(rows, words.splits);
  const { splits, sources } = list;
  const open = splitsOpen(list);
  const sourcesNote = note(() => <SourcesPart sources={sources.filter(({ key }) => behind.has(key))} room="space" />);
  const weeks = sources.find(({ key }) => key === 'space.split.weeks')?.value ?? '';
  return (
    <section className="section" aria-labelledby={heading} {...sourcesNote}>
      <h2 id={heading}>{words.splits}</h2>
      <p>{list.asOf < splits.from ? words.splitsFrom(monthDayInWords(splits.from)) : !open ? words.splitsPast : rows.length === 0 ? words.splitsNone : words.splitsSome(rows.length)}</p>
      <p className="soft space-seasons">{words.splitsWeeks(weeks, monthDayInWords(splits.frost))}</p>
      <div className="scroll" tabIndex={0} role="group" aria-label={words.lastDays}>
        <table className="tight space-boxes">
          <caption className="visually-hidden">{words.lastDays}</caption>
          <thead>
            <tr>
              <th scope="col">{words.way}</th>
              <th scope="col" className="number">
                {words.eggs}
              </th>
              <th scope="col" className="number">
                {words.lastDay}
              </th>
              <th scope="col">{words.wayState}</th>
            </tr>
          </thead>
          <tbody>
            {splits.latest.map(({ way, day, eggs, past }) => (
              <tr key={way}>
                <th scope="row">{words.ways[way]}</th>
                <td className="number">{number(eggs)}</td>
                <td className="number">{dayText(day)}</td>
                <td>{past ? words.wayPast : words.wayOpen}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {rows.length === 0 ? null : (
        <div className="scroll space-split" tabIndex={0} role="group" aria-label={words.strong}>
          <table className="tight">
            <caption className="visually-hidden">{words.strong}</caption>
            <thead>
              <tr>
                <th scope="col">{words.colony}</th>
                {[words.framesOf(words.bees), words.framesOf(words.brood), words.seen].map((head) => (
                  <th key={head} scope="col" className="number">
                    {head}
                  </th>
                ))}
                <th scope="col">{words.risk}</th>
              </tr>
            </thead>
            <tbody>
              {shown.map(({ colony, split }) => (
                <tr key={colony.id}>
                  <th scope="row">
                    <Link href={`/colonies/${colony.id}`}>{colony.label}</Link>
                  </th>
                  <td className="number">{number(split.bees, 1)}</td>
                  <td className="number">{number(split.brood, 1)}</td>
                  <td className="number">{dayShort(split.look)}</td>
                  <td>{riskText(colony)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {more}
    </section>
  );
}
