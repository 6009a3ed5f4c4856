import { useState } from 'react';
import type { LossReview } from '#shared/contract/losses.ts';
import { Figure } from '../../charts/Figure.tsx';
import { SurvivalChart } from '../../charts/SurvivalChart.tsx';
import { SurvivalTable } from '../../charts/SurvivalTable.tsx';
import { dayText } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { originOf, survivalLines, worstYard } from './survivalChoice.ts';
import { words } from './words.ts';

/** When colonies died: survival curves since winter's first day or since each colony's start, by chosen yards. */
export function SurvivalSection({ review }: { readonly review: LossReview }) {
  const [from, setFrom] = useState<'october' | 'start'>('october');
  const [chosen, setChosen] = useState<ReadonlySet<string> | null>(null);
  const note = useMarginNote();

  const set = from === 'october' ? review.sinceOctober : review.sinceStart;
  const origin = originOf(set.axis);
  const worst = worstYard(set);
  const shown = chosen ?? new Set(worst === null ? [] : [worst]);
  const lines = survivalLines(set, shown, review.yards.map(({ code }) => code));
  const october = originOf(review.sinceOctober.axis);
  const octoberText = october === null ? review.sinceOctober.axis : dayText(october);
  const name = words.survivalName(from === 'october' ? octoberText : words.sinceStart);
  const without = lines.filter(({ curve }) => curve.colonies === 0).map(({ label }) => label);
  const warnings = lines.flatMap(({ label, curve }) => (curve.warning === null || curve.colonies === 0 ? [] : [`${label}: ${curve.warning}`]));

  const toggle = (yard: string) => {
    const next = new Set(shown);
    if (!next.delete(yard)) next.add(yard);
    setChosen(next);
  };

  return (
    <section className="figured" aria-label={words.survival} {...note(<SurvivalNote since={from} />)}>
      <h2>{words.survival}</h2>
      <div className="choices survival-from">
        <label className="inline-choice">
          {words.countedFrom}{' '}
          <select value={from} onChange={(event) => setFrom(event.target.value === 'start' ? 'start' : 'october')}>
            <option value="october">{octoberText}</option>
            <option value="start">{words.sinceStart}</option>
          </select>
        </label>
      </div>
      {set.byYard.length > 1 && (
        <fieldset className="yard-picks no-print">
          <legend>{words.yardsShown}</legend>
          {set.byYard.map(({ yard, yardName }) => (
            <label key={yard}>
              <input type="checkbox" checked={shown.has(yard)} onChange={() => toggle(yard)} /> {yardName}
            </label>
          ))}
        </fieldset>
      )}
      {set.all.colonies === 0 ? (
        <p className="soft">{words.survivalNone}</p>
      ) : (
        <>
          {set.sentence !== '' && <p className="sentence survival-sentence">{set.sentence}</p>}
          <Figure
            name={name}
            picture={(width) => <SurvivalChart lines={lines} origin={from === 'october' ? origin : null} width={width} height={chartHeight(lines.length)} />}
            table={<SurvivalTable lines={lines} origin={from === 'october' ? origin : null} caption={name} />}
          />
        </>
      )}
      {without.length > 0 && set.all.colonies > 0 && <p className="soft small">{words.noColoniesIn(without.join(', '))}</p>}
      {warnings.map((warning) => (
        <p key={warning} className="soft small">
          {warning}
        </p>
      ))}
    </section>
  );
}

/** More curves need more room between them. */
function chartHeight(lines: number): number {
  return 200 + 16 * Math.max(0, lines - 2);
}

function SurvivalNote({ since }: { readonly since: 'october' | 'start' }) {
  return (
    <MarginPart heading={words.survival}>
      <p>{words.survivalHow}</p>
      {since === 'start' && <p>{words.survivalHowStart}</p>}
      <p className="soft">{words.survivalMethod}</p>
    </MarginPart>
  );
}
