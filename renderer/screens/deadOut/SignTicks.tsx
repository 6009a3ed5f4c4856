import { useRef, useState, type KeyboardEvent } from 'react';
import { deadOutSigns, deadOutSteps, type DeadOutSign } from '#shared/deadOut.ts';
import { words } from './words.ts';

export interface SignTicksProps {
  readonly signs: readonly DeadOutSign[];
  readonly onChange: (signs: readonly DeadOutSign[]) => void;
}

/** The closed list of signs, group by group: one stop of the Tab key a group, the arrow keys within and across. */
export function SignTicks({ signs, onChange }: SignTicksProps) {
  const box = useRef<HTMLDivElement>(null);
  const [at, setAt] = useState<Partial<Record<number, DeadOutSign>>>({});
  const toggle = (sign: DeadOutSign, step: (typeof deadOutSteps)[number]) => {
    const others = step.one ? signs.filter((one) => !step.signs.includes(one)) : signs.filter((one) => one !== sign);
    onChange(signs.includes(sign) ? signs.filter((one) => one !== sign) : [...others, sign]);
  };
  const onKey = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key];
    if (step === undefined || !(event.target instanceof HTMLInputElement)) return;
    const all = [...(box.current?.querySelectorAll<HTMLInputElement>('input[type=checkbox]') ?? [])];
    event.preventDefault();
    all[all.indexOf(event.target) + step]?.focus();
  };
  return (
    <div ref={box} className="signs" onKeyDown={onKey}>
      {deadOutSteps.map((step, place) => (
        <fieldset key={step.heading}>
          <legend>
            {step.heading}
            {step.one ? <span className="soft"> · {words.onlyOne}</span> : null}
          </legend>
          {step.signs.map((sign) => (
            <label key={sign}>
              <input
                type="checkbox"
                checked={signs.includes(sign)}
                tabIndex={(at[place] ?? step.signs[0]) === sign ? 0 : -1}
                onFocus={() => setAt((before) => ({ ...before, [place]: sign }))}
                onChange={() => toggle(sign, step)}
              />
              {deadOutSigns[sign]}
            </label>
          ))}
        </fieldset>
      ))}
    </div>
  );
}
