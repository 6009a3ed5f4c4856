import { useId } from 'react';
import type { OrderPlan } from '#shared/contract/order.ts';
import type { United } from '#shared/contract/values.ts';
import { dayText } from '../../parts/format.ts';
import type { PlanDesk, PlanTyping } from './usePlanChoice.ts';
import { words } from './words.ts';

export interface PlanChoicesProps {
  readonly choice: PlanDesk;
  readonly typing: PlanTyping;
  readonly plan: OrderPlan | undefined;
  readonly united: United;
  readonly onUnited: (united: United) => void;
}

/** The numbers and choices that the plan is made for. */
export function PlanChoices({ choice, typing, plan, united, onUnited }: PlanChoicesProps) {
  const id = useId();
  const slider = Number.parseFloat(typing.confidence);
  return (
    <fieldset className="plan-choices">
      <legend className="visually-hidden">{words.plan}</legend>
      <div className="field plan-target">
        <label htmlFor={`${id}target`}>{words.target(plan ? dayText(plan.spring) : words.spring)}</label>
        <input
          id={`${id}target`}
          type="text"
          inputMode="numeric"
          value={typing.target}
          placeholder={plan ? String(plan.target) : ''}
          aria-invalid={choice.badTarget}
          aria-describedby={`${id}target-says`}
          onChange={(event) => choice.type({ target: event.target.value })}
        />
        <span id={`${id}target-says`} className={choice.badTarget ? 'field-fault' : 'soft small'}>
          {choice.badTarget ? words.targetBad : plan && typing.target.trim() === '' ? words.targetHint : ''}
        </span>
      </div>
      <div className="field">
        <label htmlFor={`${id}sure`}>{words.confidence}</label>
        <div className="plan-sure">
          <input
            id={`${id}sure`}
            type="text"
            inputMode="decimal"
            value={typing.confidence}
            aria-invalid={choice.badConfidence}
            aria-describedby={`${id}sure-says`}
            onChange={(event) => choice.type({ confidence: event.target.value })}
          />
          <input
            type="range"
            min={50}
            max={99}
            step={1}
            aria-label={words.confidenceSlider}
            value={Number.isFinite(slider) ? slider : 90}
            onChange={(event) => choice.type({ confidence: event.target.value })}
          />
        </div>
        <span id={`${id}sure-says`} className="field-fault">
          {choice.badConfidence ? words.confidenceBad : ''}
        </span>
      </div>
      <Choice label={words.source} value={typing.source} options={words.sources} onChange={(source) => choice.type({ source: source === 'nuc' ? 'nuc' : 'package' })} />
      <Choice
        label={words.frames}
        value={String(typing.hiveFrames)}
        options={words.framesOf}
        onChange={(frames) => choice.type({ hiveFrames: frames === '8' ? 8 : 10 })}
      />
      <Choice label={words.united} value={united} options={words.unitedChoice} onChange={(next) => onUnited(next === 'takenOut' ? 'takenOut' : 'lost')} />
    </fieldset>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: Readonly<Record<string, string>>;
  readonly onChange: (value: string) => void;
}

function Choice({ label, value, options, onChange }: ChoiceProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
        {Object.entries(options).map(([known, text]) => (
          <option key={known} value={known}>
            {text}
          </option>
        ))}
      </select>
    </div>
  );
}
