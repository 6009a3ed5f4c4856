import { useId, useState, type KeyboardEvent } from 'react';
import type { RuleLine } from '#shared/contract/rules.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { number } from '../../parts/format.ts';
import { readRule, ruleText, ruleTyped } from '../stock/readRule.ts';
import { words } from './words.ts';

/** One house rule: its field, its default, what it may be, and the word for its source. A refusal stands below the field. */
export function RuleRow({ rule }: { readonly rule: RuleLine }) {
  const { send, busy } = useWrite('rules.set');
  const notice = useNotice();
  const note = useMarginNote();
  const refusal = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [says, setSays] = useState<string | null>(null);
  const [fault, setFault] = useState<Fault | undefined>(undefined);

  const leave = () => {
    setTyped(null);
    setSays(null);
    setFault(undefined);
  };
  const set = async (value: RuleLine['value'] | null) => {
    const answer = await send({ key: rule.key, value });
    if (!answer.ok) {
      setSays(null);
      return setFault(answer);
    }
    leave();
    const text = ruleText(rule, value ?? rule.default);
    notice.say(value === null ? words.back(rule.label, text) : words.set(rule.label, text));
  };
  const keep = () => {
    if (typed === null || busy) return;
    if (typed === ruleTyped(rule)) return leave();
    const read = readRule(rule, typed);
    // Typing the default is the same as setting the rule back to it.
    if (read.ok) void set(read.value === rule.default ? null : read.value);
    else {
      setFault(undefined);
      setSays(read.sentence);
    }
  };
  const onKey = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') keep();
    else if (event.key === 'Escape') leave();
    else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      step(event.currentTarget, event.key === 'ArrowDown' ? 1 : -1);
    }
  };

  return (
    <tr className={rule.changed ? 'rule-changed' : ''} {...note(() => <RuleNote rule={rule} />)}>
      <th scope="row">
        {rule.label}
        <span className="soft small rule-affects">{rule.affects}</span>
      </th>
      <td className="rule-now">
        <span className="rule-field">
          <input
            type="text"
            autoComplete="off"
            aria-label={rule.label}
            aria-invalid={says !== null}
            aria-describedby={says === null ? undefined : refusal}
            className={rule.type === 'text' ? 'rule-words' : ''}
            value={typed ?? ruleTyped(rule)}
            onChange={(event) => setTyped(event.target.value)}
            onKeyDown={onKey}
            onBlur={keep}
          />
          <span className="soft">{unitOf(rule)}</span>
        </span>
        {says === null ? null : (
          <span ref={intoView} id={refusal} className="field-fault" role="alert">
            {says}
          </span>
        )}
        <FaultNote fault={fault} />
        {rule.changed ? (
          <span className="rule-mark">
            {words.changed}{' · '}
            <button type="button" className="link" disabled={busy} onClick={() => void set(null)}>
              {words.reset}
              <span className="visually-hidden"> ({rule.label})</span>
            </button>
          </span>
        ) : null}
      </td>
      <td>{ruleText(rule, rule.default)}</td>
      <td>{rangeText(rule)}</td>
      <td>
        {words.sourceWord[rule.confidence]}
        {rule.treatment ? <span className="rule-label">{words.label}</span> : null}
      </td>
    </tr>
  );
}

function RuleNote({ rule }: { readonly rule: RuleLine }) {
  return (
    <>
      <MarginPart heading={rule.label}>
        <p>{rule.affects}</p>
      </MarginPart>
      <MarginPart heading={words.from}>
        <p>{rule.source}.</p>
        <p className="soft">{words.sourceMeans[rule.confidence]}</p>
        {rule.treatment ? <p>{words.labelMeans}</p> : null}
      </MarginPart>
    </>
  );
}

/** A refusal under the last line of the window would not be seen. */
function intoView(sentence: HTMLElement | null): void {
  sentence?.scrollIntoView({ block: 'nearest' });
}

/** To the field of the rule above or below, over the headings. */
function step(from: HTMLInputElement, by: number): void {
  const fields = [...document.querySelectorAll<HTMLInputElement>('.rule-field input')];
  const next = fields[fields.indexOf(from) + by];
  next?.focus();
  next?.select();
}

function unitOf({ type, unit }: RuleLine): string {
  if (type !== 'number') return type === 'month-day' ? words.anyDayHint : '';
  return unit === 'share' ? words.share : unit;
}

function rangeText({ type, unit, range }: RuleLine): string {
  if (type === 'month-day') return words.anyDay;
  if (type === 'text' || range === null) return words.fewWords;
  const times = unit === 'share' ? 100 : 1;
  return words.to(number(range[0] * times, 4), number(range[1] * times, 4));
}
