import { useId } from 'react';
import { Link } from 'wouter';
import { seasonName } from '#shared/seasons.ts';
import type { MassUnit } from '#shared/units.ts';
import type { ColonyStory } from '#shared/contract/colonies.ts';
import { dayText, fixed, massFromPounds, missing, number } from '../../parts/format.ts';
import { QueenMark } from '../../parts/QueenMark.tsx';
import { storyWords as words } from './storyWords.ts';

export function QueenTable({ queens }: { readonly queens: ColonyStory['queens'] }) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.queens}</h2>
      {queens.length === 0 ? (
        <p className="soft">{words.queensNone}</p>
      ) : (
        <table className="tight" aria-labelledby={id}>
          <thead>
            <tr>
              <th scope="col">{words.queen}</th>
              <th scope="col">{words.source}</th>
              <th scope="col">{words.since}</th>
              <th scope="col">{words.until}</th>
            </tr>
          </thead>
          <tbody>
            {queens.map((queen) => (
              <tr key={`${queen.since}-${queen.until ?? ''}-${queen.year ?? ''}`}>
                <th scope="row">
                  <Link href={`/queens/${queen.id}`}>
                    <QueenMark queen={queen} />
                  </Link>
                  {queen.marked ? <span className="soft small"> {words.marked}</span> : null}
                </th>
                <td>{queen.source ?? missing}</td>
                <td>{dayText(queen.since)}</td>
                <td>
                  {queen.until ? dayText(queen.until) : words.now}
                  {queen.ending ? <span className="soft">, {queen.ending}</span> : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

export function Stays({ stays }: { readonly stays: ColonyStory['stays'] }) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.stays}</h2>
      <table className="tight" aria-labelledby={id}>
        <thead>
          <tr>
            <th scope="col">{words.yard}</th>
            <th scope="col">{words.since}</th>
            <th scope="col">{words.until}</th>
          </tr>
        </thead>
        <tbody>
          {stays.map((stay) => (
            <tr key={`${stay.yard}-${stay.from}`}>
              <th scope="row">{stay.yardName}</th>
              <td>{dayText(stay.from)}</td>
              <td>{stay.until ? dayText(stay.until) : words.now}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

export function HoneyTable({ honey, massUnit }: { readonly honey: ColonyStory['honey']; readonly massUnit: MassUnit }) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.honey}</h2>
      {honey.length === 0 ? (
        <p className="soft">{words.honeyNone}</p>
      ) : (
        <table className="tight" aria-labelledby={id}>
          <thead>
            <tr>
              <th scope="col">{words.season}</th>
              <th scope="col" className="number">
                {massUnit === 'lb' ? words.pounds : words.kilograms}
              </th>
              <th scope="col" className="number">
                {words.harvests}
              </th>
            </tr>
          </thead>
          <tbody>
            {honey.map((year) => (
              <tr key={year.season}>
                <th scope="row">{seasonName(year.season)}</th>
                <td className="number">{massFromPounds(year.lb, massUnit, 1)}</td>
                <td className="number">{number(year.harvests)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

export function MiteTable({ counts }: { readonly counts: ColonyStory['miteCounts'] }) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.mites}</h2>
      {counts.length === 0 ? (
        <p className="soft">{words.mitesNone}</p>
      ) : (
        <table className="tight" aria-labelledby={id}>
          <thead>
            <tr>
              <th scope="col">{words.day}</th>
              <th scope="col" className="number">
                {words.counted}
              </th>
              <th scope="col" className="number">
                {words.inBees}
              </th>
              <th scope="col" className="number">
                {words.per100}
              </th>
              <th scope="col" className="number">
                {words.range}
              </th>
            </tr>
          </thead>
          <tbody>
            {counts.map((count, place) => (
              <tr key={`${count.day}-${place}`}>
                <th scope="row">{dayText(count.day)}</th>
                <td className="number">{number(count.mites)}</td>
                <td className="number">{number(count.bees)}</td>
                <td className="number">{fixed(count.per100, 1)}</td>
                <td className="number">
                  {fixed(count.range[0], 1)}–{fixed(count.range[1], 1)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
