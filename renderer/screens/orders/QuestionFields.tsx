import { useId, type ReactNode } from 'react';
import type { OrderDecision } from '#shared/contract/decision.ts';
import { dayText, percent } from '../../parts/format.ts';
import { useUnited } from '../losses/useUnited.ts';
import { troubleOf, type Typing } from './readQuestion.ts';
import type { QuestionDesk } from './useQuestion.ts';
import { words } from './words.ts';

/** Target, confidence and what is only asked about; every slider has the arrow keys and a number beside it. */
export function QuestionFields({ desk, typing, decision }: { readonly desk: QuestionDesk; readonly typing: Typing; readonly decision: OrderDecision | undefined }) {
  const id = useId();
  const [united, setUnited] = useUnited();
  const bad = troubleOf(typing);
  const slider = Number.parseFloat(typing.confidence);
  const about = decision?.target ?? 0;
  const wanted = Number.parseInt(typing.target.trim() === '' ? String(about) : typing.target, 10);
  const mostWanted = Math.max(20, Math.ceil(((decision?.living ?? 0) * 1.5) / 10) * 10, Number.isFinite(wanted) ? wanted : 0);
  const expected = decision === undefined ? '' : percent(decision.forecast.rate);
  const number = (part: 'requeen' | 'budget' | 'hours', label: string, hint: string) => (
    <div className="field">
      <label htmlFor={`${id}${part}`}>{label}</label>
      <input id={`${id}${part}`} type="text" inputMode="numeric" value={typing[part]} placeholder={hint} aria-invalid={bad[part]} aria-describedby={`${id}${part}-says`} onChange={(event) => desk.type({ [part]: event.target.value })} />
      <span id={`${id}${part}-says`} className="field-fault">
        {bad[part] ? words.numberBad : ''}
      </span>
    </div>
  );
  return (
    <fieldset className="order-question">
      <legend className="visually-hidden">{words.question}</legend>
      <div className="field">
        <label htmlFor={`${id}target`}>{words.target}</label>
        <div className="order-slide">
          <input id={`${id}target`} type="text" inputMode="numeric" value={typing.target} placeholder={decision ? String(decision.target) : ''} aria-invalid={bad.target} aria-describedby={`${id}target-says`} onChange={(event) => desk.type({ target: event.target.value })} />
          <input type="range" min={0} max={mostWanted} step={1} aria-label={words.targetSlider} value={Number.isFinite(wanted) ? wanted : 0} onChange={(event) => desk.type({ target: event.target.value })} />
        </div>
        <span id={`${id}target-says`} className={bad.target ? 'field-fault' : 'soft small'}>
          {bad.target ? words.targetBad : decision ? `${words.targetOn(dayText(decision.targetDay))}${typing.target.trim() === '' ? `; ${words.targetHint}` : ''}` : ''}
        </span>
      </div>
      <div className="field">
        <label htmlFor={`${id}sure`}>{words.confidence}</label>
        <div className="order-slide">
          <input id={`${id}sure`} type="text" inputMode="decimal" value={typing.confidence} aria-invalid={bad.confidence} aria-describedby={`${id}sure-says`} onChange={(event) => desk.type({ confidence: event.target.value })} />
          <input type="range" min={50} max={99} step={1} aria-label={words.confidenceSlider} value={Number.isFinite(slider) ? slider : 80} onChange={(event) => desk.type({ confidence: event.target.value })} />
        </div>
        <span id={`${id}sure-says`} className="field-fault">
          {bad.confidence ? words.confidenceBad : ''}
        </span>
      </div>
      <WhatIf label={words.price} said={words.priceValue(typing.price)} back={typing.price === 100 ? null : words.priceBack} onBack={() => desk.type({ price: 100 })}>
        {(describe) => <input id={describe.id} type="range" min={50} max={200} step={5} aria-describedby={describe.says} value={typing.price} onChange={(event) => desk.type({ price: Number(event.target.value) })} />}
      </WhatIf>
      <WhatIf label={words.loss} said={words.lossValue(typing.loss, expected)} back={typing.loss === null ? null : words.lossBack} onBack={() => desk.type({ loss: null })}>
        {(describe) => (
          <input id={describe.id} type="range" min={2} max={90} step={1} aria-describedby={describe.says} value={typing.loss ?? Math.round((decision?.forecast.rate ?? 0.29) * 100)} onChange={(event) => desk.type({ loss: Number(event.target.value) })} />
        )}
      </WhatIf>
      <details className="order-more">
        <summary>{words.more}</summary>
        <div className="order-more-fields">
          <Choice label={words.splits} value={typing.splits} options={words.splitsOf} onChange={(splits) => desk.type({ splits })} />
          <Choice label={words.queens} value={typing.queens} options={words.queensOf} onChange={(queens) => desk.type({ queens })} />
          {number('requeen', words.requeen, '0')}
          {number('budget', words.budget, words.noLimit)}
          {number('hours', words.hours, words.byRule)}
          <Choice label={words.frames} value={typing.frames} options={words.framesOf} onChange={(frames) => desk.type({ frames })} />
          <Choice label={words.united} value={united} options={words.unitedOf} onChange={setUnited} />
        </div>
        <p className="soft small">{decision?.oldQueens.sentence}</p>
      </details>
    </fieldset>
  );
}

interface WhatIfProps {
  readonly label: string;
  readonly said: string;
  readonly back: string | null;
  readonly onBack: () => void;
  readonly children: (describe: { readonly id: string; readonly says: string }) => ReactNode;
}

function WhatIf({ label, said, back, onBack, children }: WhatIfProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>
        {words.whatIf}: {label.toLowerCase()}
      </label>
      <div className="order-slide">{children({ id, says: `${id}-says` })}</div>
      <span id={`${id}-says`} className="soft small">
        {said}{' '}
        {back === null ? null : (
          <button type="button" className="link" onClick={onBack}>
            {back}
          </button>
        )}
      </span>
    </div>
  );
}

function Choice<Value extends string>({ label, value, options, onChange }: { readonly label: string; readonly value: Value; readonly options: Readonly<Record<Value, string>>; readonly onChange: (value: Value) => void }) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value as Value)}>
        {(Object.keys(options) as Value[]).map((known) => (
          <option key={known} value={known}>
            {options[known]}
          </option>
        ))}
      </select>
    </div>
  );
}
