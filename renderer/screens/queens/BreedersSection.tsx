import { useState } from 'react';
import { Link } from 'wouter';
import type { Breeder, BreedersView, BreederWeightsView } from '#shared/contract/breeders.ts';
import { useCalmRead, useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { fixed, missing, percent } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { QueenMark } from '../../parts/QueenMark.tsx';
import { faultText, useNotice } from '../../parts/Notice.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { words } from './queensWords.ts';

const traits = ['winter', 'honey', 'mites', 'temper', 'swarming'] as const;

/** Breeders, the best first, by the person's own weights. */
export function BreedersSection() {
  const { data, fault } = useCalmRead('queens.breeders', {}, { keep: true });
  return (
    <section className="section" aria-label={words.breeders}>
      <h2>{words.breeders}</h2>
      <p>{words.breedersLine}</p>
      <FaultNote fault={fault} />
      {data ? (
        <>
          <Weights weights={data.weights} />
          <Ranking view={data} />
        </>
      ) : null}
    </section>
  );
}

function Weights({ weights }: { readonly weights: BreederWeightsView }) {
  const { send } = useWrite('queens.weigh');
  const notice = useNotice();
  const [before, setBefore] = useState<BreederWeightsView | null>(null);
  const keep = async (next: BreederWeightsView) => {
    const answer = await send(next);
    if (answer.ok) setBefore(answer.value.before);
    notice.say(answer.ok ? words.weighed : faultText(answer));
  };
  return (
    <Entering>
      <div className="choices no-print" role="group" aria-label={words.weigh}>
        <span>{words.weigh}</span>
        {traits.map((trait) => (
          <label key={trait} className="inline-choice">
            {words.traits[trait]}{' '}
            <select value={weights[trait]} onChange={(event) => void keep({ ...weights, [trait]: Number(event.target.value) })}>
              {words.weights.map((name, weight) => (
                <option key={name} value={weight}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        ))}
        {before === null ? null : (
          <button type="button" onClick={() => void keep(before)}>
            {words.before}
          </button>
        )}
      </div>
    </Entering>
  );
}

function Ranking({ view: { ranked, traits: about, weights } }: { readonly view: BreedersView }) {
  const { shown, more } = useFirstRows(ranked, words.breeders);
  const note = useMarginNote();
  const counted = traits.filter((trait) => weights[trait] > 0);
  const without = counted.filter((trait) => about[trait].says !== '');
  const told = counted.filter((trait) => about[trait].says === '');
  const open = ranked.filter(({ apart }) => !apart).length;
  return (
    <>
      <p className="sentence">{ranked.length === 0 ? words.nothingRanked : words.firsts(open, ranked.length)}</p>
      {ranked.length === 0 ? null : (
        <div className="scroll" tabIndex={0} role="group" aria-label={words.breeders}>
          <table className="tight">
            <caption className="visually-hidden">{words.breeders}</caption>
            <thead>
              <tr>
                <th scope="col">{words.queen}</th>
                <th scope="col" className="number">
                  {words.sum}
                </th>
                <th scope="col">{words.apart}</th>
                <th scope="col" className="number">
                  {words.daughters}
                </th>
                {told.map((trait) => (
                  <th key={trait} scope="col" className="number">
                    {words.traits[trait]}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {shown.map((breeder, at) => (
                <tr key={breeder.queen.id} {...note(() => <BreederNote breeder={breeder} told={told} />)}>
                  <th scope="row">
                    <Link href={`/queens/${breeder.queen.id}`}>
                      {breeder.colony.label} <QueenMark queen={breeder.queen} />
                    </Link>
                  </th>
                  <td className="number">
                    <Figure value={breeder.sum} limits={breeder.limits} />
                  </td>
                  <td>{at === 0 ? words.first : breeder.apart ? words.isApart : <span className="soft">{words.notApart}</span>}</td>
                  <td className="number">{breeder.daughters}</td>
                  {told.map((trait) => (
                    <td key={trait} className="number">
                      <Score score={breeder.traits[trait]} />
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
          {more}
        </div>
      )}
      {without.length === 0 ? null : (
        <ul className="soft">
          {without.map((trait) => (
            <li key={trait}>{words.noScore(words.traits[trait], about[trait].says)}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function BreederNote({ breeder, told }: { readonly breeder: Breeder; readonly told: readonly (typeof traits)[number][] }) {
  return told.map((trait) => {
    const score = breeder.traits[trait];
    return (
      <MarginPart key={trait} heading={words.traits[trait]}>
        <p>{score === null ? words.unknown : words.basis(score.n, percent(score.shrinkage))}</p>
      </MarginPart>
    );
  });
}

function Score({ score }: { readonly score: Breeder['traits']['honey'] }) {
  if (score === null) return <span className="soft">{missing}</span>;
  return (
    <>
      <Figure value={score.score} limits={score.limits} />
      <span className="queens-line soft small">{`n ${score.n}`}</span>
    </>
  );
}

function Figure({ value, limits }: { readonly value: number; readonly limits: readonly [number, number] }) {
  return (
    <span className="queens-figure">
      {signed(value)} <span className="soft small">{`(${signed(limits[0])} to ${signed(limits[1])})`}</span>
    </span>
  );
}

function signed(value: number): string {
  const text = fixed(Math.abs(value), 1);
  return Number(text) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
}
