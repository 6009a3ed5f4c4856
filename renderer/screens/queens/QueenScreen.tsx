import { useId } from 'react';
import { Link } from 'wouter';
import type { QueenFigure, QueenShare, QueenStory } from '#shared/contract/queens.ts';
import { seasonName } from '#shared/seasons.ts';
import type { MassUnit } from '#shared/units.ts';
import { useBook } from '../../desk/useBook.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, fixed, massFromPounds, missing, number, rate } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { QueenMark } from '../../parts/QueenMark.tsx';
import { storyWords } from '../colonies/storyWords.ts';
import { QueenKin } from './QueenKin.tsx';
import { words } from './words.ts';

/** A queen's own page: what she is, her kin, where she was, and how her colonies did. */
export function QueenScreen({ id }: { readonly id: string }) {
  const known = /^\d{1,9}$/.test(id) && Number(id) > 0;
  const asOf = useAsOf();
  const { book } = useBook();
  const { data, fault } = useRead('queen.story', { id: known ? Number(id) : 1 }, { enabled: known });
  if (!known || data === undefined || book === undefined) {
    return (
      <Page title={storyWords.queen} line={!known || fault ? (asOf === null ? words.noSuch : '') : words.loading}>
        <FaultNote fault={fault} />
        <p>
          <Link href="/colonies">{words.back}</Link>
        </p>
      </Page>
    );
  }
  const { queen, sentence, reigns } = data;
  return (
    <Page title={words.title(queen.colour === null || queen.year === null ? words.unknownYear : `${queen.colour} ${queen.year}`)} line={lineOf(data)}>
      <p className="sentence">{sentence}</p>
      <div className="pair section">
        <Facts story={data} />
        <QueenKin story={data} />
      </div>
      <Where reigns={reigns} />
      <Record story={data} />
      <Honey honey={data.honey} unit={book.massUnit} />
      <MarginContent heading={words.marginDescent}>
        <p>{data.motherSays}</p>
        <p>{words.marginDescentText}</p>
      </MarginContent>
      <MarginContent heading={words.marginCount}>
        {words.marginCountText.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </MarginContent>
      <MarginContent heading={words.marginColour}>
        <p>{words.marginColourText}</p>
      </MarginContent>
    </Page>
  );
}

function lineOf({ reigns }: QueenStory): string {
  const last = reigns.at(-1);
  if (last === undefined) return '';
  return last.until === null ? words.lineNow(last.colony.label, dayText(last.from)) : words.lineGone(last.colony.label, dayText(last.until));
}

function Facts({ story: { queen } }: { readonly story: QueenStory }) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.what}</h2>
      <dl className="descent">
        <dt>{words.year}</dt>
        <dd>{queen.year === null ? <span className="soft">{words.notWritten}</span> : <QueenMark queen={queen} />}</dd>
        <dt>{words.marked}</dt>
        <dd>{queen.marked ? words.isMarked : words.notMarked}</dd>
        <dt>{words.source}</dt>
        <dd>{queen.source ?? <span className="soft">{words.notWritten}</span>}</dd>
      </dl>
    </section>
  );
}

function Where({ reigns }: Pick<QueenStory, 'reigns'>) {
  const id = useId();
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.where}</h2>
      <table className="tight" aria-labelledby={id}>
        <thead>
          <tr>
            {[words.colony, words.yard, words.from, words.until, words.why].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {reigns.map(({ colony, yards, from, until, ending, colonyEnd }) => (
            <tr key={`${colony.id} ${from}`}>
              <th scope="row">
                <Link href={`/colonies/${colony.id}`}>
                  <bdi>{colony.label}</bdi>
                </Link>
              </th>
              <td>{yards.join(', ')}</td>
              <td>{dayText(from)}</td>
              <td>{until === null ? words.now : dayText(until)}</td>
              <td>{colonyEnd ?? (ending === null ? '' : (words.ending[ending] ?? ending))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Record({ story: { brood, mites, temper, swarming, winters } }: { readonly story: QueenStory }) {
  const id = useId();
  const share = ({ count, of, interval }: QueenShare) => rate(count, of, interval);
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.did}</h2>
      <table className="tight" aria-labelledby={id}>
        <thead>
          <tr>
            <th scope="col">{words.measure}</th>
            <th scope="col" className="number">
              {words.figure}
            </th>
            <th scope="col">{words.rests}</th>
            <th scope="col">{words.says}</th>
          </tr>
        </thead>
        <tbody>
          <Line name={words.brood} figure={figureText(brood)} rests={words.looks(brood.n)} says={brood.says} />
          <Line name={words.temper} figure={figureText(temper)} rests={words.looks(temper.n)} says={temper.says} />
          <Line name={words.mites} figure={figureText(mites)} rests={words.washes(mites.n, number(mites.mites), number(mites.bees))} says={mites.says} />
          <Line name={words.swarming} figure={share(swarming)} rests={words.seasons(swarming.of)} says={swarming.says} />
          <Line name={words.winters} figure={share(winters)} rests={words.wintersOf(winters.of)} says={winters.says} />
        </tbody>
      </table>
    </section>
  );
}

function Line({ name, figure, rests, says }: { readonly name: string; readonly figure: string; readonly rests: string; readonly says: string }) {
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="number figure-range">{figure}</td>
      <td>{rests}</td>
      <td className="soft">{says}</td>
    </tr>
  );
}

function figureText({ value, interval }: QueenFigure): string {
  if (value === null) return missing;
  return interval === null ? fixed(value, 1) : `${fixed(value, 1)}  (${fixed(interval[0], 1)}–${fixed(interval[1], 1)})`;
}

function Honey({ honey, unit }: { readonly honey: QueenStory['honey']; readonly unit: MassUnit }) {
  const id = useId();
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.honey}</h2>
      {honey.length === 0 ? (
        <p className="soft">{words.honeyNone}</p>
      ) : (
        <table className="tight narrow" aria-labelledby={id}>
          <thead>
            <tr>
              <th scope="col">{words.season}</th>
              <th scope="col" className="number">
                {unit === 'lb' ? storyWords.pounds : storyWords.kilograms}
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
                <td className="number">{massFromPounds(year.lb, unit, 1)}</td>
                <td className="number">{number(year.harvests)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
