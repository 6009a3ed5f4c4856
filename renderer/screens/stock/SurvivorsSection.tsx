import type { OrderPlan } from '#shared/contract/order.ts';
import { seasonName } from '#shared/seasons.ts';
import { Figure } from '../../charts/Figure.tsx';
import { SurvivorBars } from '../../charts/SurvivorBars.tsx';
import { SurvivorTable } from '../../charts/SurvivorTable.tsx';
import { dayShort, percent } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';

/** How many colonies are likely to be alive in spring, against the target. */
export function SurvivorsSection({ plan, spring }: { readonly plan: OrderPlan; readonly spring: string }) {
  const note = useMarginNote();
  const { chances, low, high } = plan.survivors;
  const data = { chances, low, high, target: plan.target };
  return (
    <section className="figured" aria-label={words.survivors(spring)} {...note(<SurvivorsNote plan={plan} />)}>
      <h2>{words.survivors(spring)}</h2>
      <Figure
        name={words.survivorsName}
        picture={(width) => <SurvivorBars data={data} width={width} />}
        table={<SurvivorTable data={data} caption={words.survivorsName} />}
      />
    </section>
  );
}

function SurvivorsNote({ plan }: { readonly plan: OrderPlan }) {
  const first = plan.past[0];
  return (
    <>
      <MarginPart heading={words.survivorsNote}>
        <p>{words.survivorsText(plan.living, plan.survivors.low, plan.survivors.high)}</p>
        <p>{words.prior(percent(plan.prior.rate), plan.prior.seasons)}</p>
        <p className="soft">{priorText(plan.prior.rule)}</p>
      </MarginPart>
      <MarginPart heading={first ? words.pastWintersFrom(dayShort(first.from)) : words.pastWinters}>
        {plan.past.length === 0 && <p>{words.pastNone}</p>}
        <ul>
          {plan.past.map((winter) => (
            <li key={winter.season}>{words.pastWinter(seasonName(winter.season), winter.lost, winter.atRisk)}</li>
          ))}
        </ul>
        {plan.past.length > 0 && plan.past.length < 5 && <p>{words.fewWinters}</p>}
      </MarginPart>
    </>
  );
}

/** How rate and spread were found, in words. */
function priorText(rule: string): string {
  return rule in words.priorRules ? words.priorRules[rule as keyof typeof words.priorRules] : rule;
}
