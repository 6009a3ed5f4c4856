import type { DueItem } from '#shared/contract/due.ts';
import { dayText } from './format.ts';
import { RuleNumbers } from './RuleNumbers.tsx';
import { RulesLink } from './RulesLink.tsx';
import { dueWords as words } from './dueWords.ts';

/** What the margin says of one thing that is or was due: the record, its days, the house's numbers and their source. */
export function DueNote({ item }: { readonly item: Pick<DueItem, 'what' | 'reason' | 'earliest' | 'latest' | 'sources'> & { readonly rule: string } }) {
  return (
    <section className="margin-part">
      <h2>{item.what}</h2>
      <p>{item.reason}</p>
      <p>{item.earliest === item.latest ? words.on(dayText(item.latest)) : words.between(dayText(item.earliest), dayText(item.latest))}</p>
      <RuleNumbers numbers={item.sources.map((one) => ({ ...one, value: words.days(one.value) }))} />
      <RulesLink room="attention" />
      {item.rule === 'treatmentOff' ? <p>{words.label}</p> : null}
    </section>
  );
}
