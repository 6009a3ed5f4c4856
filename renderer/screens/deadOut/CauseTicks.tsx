import type { DeadOutJudgement } from '#shared/contract/deadOut.ts';
import type { Cause } from '#shared/deadOut.ts';
import { causes } from '#shared/entryForms.ts';
import { useMarginNote } from '../../parts/Margin.tsx';
import { SuggestionNote } from './DeadOutMargin.tsx';
import { words } from './words.ts';

export interface CauseTicksProps {
  readonly judgement: DeadOutJudgement;
  readonly looked: boolean;
  readonly taken: readonly Cause[];
  readonly onChange: (taken: readonly Cause[]) => void;
}

/** Causes to take up: what the signs speak for with its reason, then the others. Nothing is ticked by itself. */
export function CauseTicks({ judgement, looked, taken, onChange }: CauseTicksProps) {
  const note = useMarginNote();
  const { suggestions, remarks } = judgement;
  const suggested = new Set(suggestions.map(({ cause }) => cause));
  const tick = (cause: Cause) => (
    <input type="checkbox" checked={taken.includes(cause)} onChange={() => onChange(taken.includes(cause) ? taken.filter((one) => one !== cause) : [...taken, cause])} />
  );
  return (
    <fieldset className="dead-out-causes">
      <legend>{words.causes}</legend>
      {suggestions.length === 0 ? <p className="soft">{looked ? words.nothingFits : words.unlooked}</p> : null}
      <ul>
        {suggestions.map((one) => (
          <li key={one.cause} {...note(<SuggestionNote suggestion={one} />)}>
            <label>
              {tick(one.cause)}
              <strong>{one.cause}</strong> <span className="soft">{words.weights[one.weight]}</span>
            </label>
            <p className="small">{one.reasons[0]?.sentence}</p>
          </li>
        ))}
      </ul>
      {remarks.map((remark) => (
        <p key={remark} className="soft small">
          {remark}
        </p>
      ))}
      <p className="label soft">{words.others}</p>
      <div className="ticks">
        {causes.map((cause) =>
          suggested.has(cause) ? null : (
            <label key={cause}>
              {tick(cause)}
              {cause}
            </label>
          ),
        )}
      </div>
      {taken.length === 0 ? <p className="soft small">{words.causesNone}</p> : null}
    </fieldset>
  );
}
