import { useState, type FormEvent } from 'react';
import type { HouseRule } from '#shared/contract/order.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { readRule, ruleText, ruleTyped } from './readRule.ts';
import { words } from './words.ts';

/** House rules, each to be changed in its place. */
export function RuleList({ rules }: { readonly rules: readonly HouseRule[] }) {
  return (
    <ul className="rules">
      {rules.map((rule) => (
        <li key={rule.key}>
          <Entering>
            <Rule rule={rule} />
          </Entering>
        </li>
      ))}
    </ul>
  );
}

function Rule({ rule }: { readonly rule: HouseRule }) {
  const { send, busy } = useWrite('rules.set');
  const notice = useNotice();
  const [typed, setTyped] = useState<string | null>(null);
  const [says, setSays] = useState<string | null>(null);
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  const changed = rule.value !== rule.default;

  const set = async (value: HouseRule['value'] | null) => {
    const answer = await send({ key: rule.key, value });
    if (!answer.ok) return setFault(answer);
    setTyped(null);
    setSays(null);
    setFault(undefined);
    notice.say(words.ruleSet(rule.label, ruleText(rule, value ?? rule.default)));
  };
  const keep = (event: FormEvent) => {
    event.preventDefault();
    if (typed === null || busy) return;
    const read = readRule(rule, typed);
    if (read.ok) void set(read.value);
    else setSays(read.sentence);
  };

  return (
    <>
      <p>
        {rule.label}: <strong>{ruleText(rule, rule.value)}</strong>
        {changed ? <span className="soft"> ({words.byDefault(ruleText(rule, rule.default))})</span> : null}
      </p>
      <p className="soft small">
        {[rule.source, words.confidenceWord[rule.confidence]].filter((part) => part !== '').join('; ')}.
      </p>
      {typed === null ? (
        <p className="rule-acts">
          <button type="button" className="link" onClick={() => setTyped(ruleTyped(rule))}>
            {words.change}
            <span className="visually-hidden"> ({rule.label})</span>
          </button>
          {changed && (
            <button type="button" className="link" disabled={busy} onClick={() => void set(null)}>
              {words.reset}
              <span className="visually-hidden"> ({rule.label})</span>
            </button>
          )}
        </p>
      ) : (
        <form className="rule-form" onSubmit={keep} noValidate>
          <input
            type="text"
            autoFocus
            aria-label={rule.label}
            aria-invalid={says !== null}
            value={typed}
            onChange={(event) => setTyped(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Escape') setTyped(null);
            }}
          />
          <button type="submit" disabled={busy}>
            {words.keep}
          </button>
          <button type="button" className="link" onClick={() => setTyped(null)}>
            {words.leave}
          </button>
          {says !== null && (
            <p className="field-fault" role="alert">
              {says}
            </p>
          )}
        </form>
      )}
      <FaultNote fault={fault} />
    </>
  );
}
