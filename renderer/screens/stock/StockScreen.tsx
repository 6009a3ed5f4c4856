import { Link } from 'wouter';
import '../../charts/charts.css';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { Page } from '../../parts/Page.tsx';
import { useUnited } from '../losses/useUnited.ts';
import { EquipmentSection } from './EquipmentSection.tsx';
import { LadderSection } from './LadderSection.tsx';
import { OrdersSection } from './OrdersSection.tsx';
import { PlanChoices } from './PlanChoices.tsx';
import { EarlierNotes } from '../losses/EarlierNotes.tsx';
import { RulesMargin } from './RulesMargin.tsx';
import { ShedSection } from './ShedSection.tsx';
import './stock.css';
import { SurvivorsSection } from './SurvivorsSection.tsx';
import { usePlan } from './usePlan.ts';
import { usePlanChoice } from './usePlanChoice.ts';
import { words } from './words.ts';

/** What is there, how many will live, and what to order by when. */
export function StockScreen() {
  const choice = usePlanChoice();
  const [united, setUnited] = useUnited();
  const { data: plan, fault } = usePlan(choice.settled, united);
  const nothingYet = plan !== undefined && plan.living === 0 && plan.target === 0;
  return (
    <Page
      title={words.title}
      line={words.line}
      asOf={plan?.asOf}
      action={
        <Link href="/print/order" className="button main">
          {words.print}
        </Link>
      }
    >
      {choice.typing && (
        <PlanChoices choice={choice} typing={choice.typing} plan={plan} united={united} onUnited={setUnited} />
      )}
      <FaultNote fault={fault} />
      {plan && !nothingYet && (
        <>
          <p className="sentence">{plan.sentences.join(' ')}</p>
          {plan.cautions.map((caution) => (
            <p key={caution} className="caution plan-caution">
              {caution}
            </p>
          ))}
          <OrdersSection plan={plan} />
          {plan.living > 0 && (
            <div className="plan-pair section">
              <SurvivorsSection plan={plan} spring={dayText(plan.spring)} />
              <LadderSection plan={plan} />
            </div>
          )}
          <EquipmentSection plan={plan} />
        </>
      )}
      {plan && nothingYet && <Empty sentence={words.empty} action={<Link href="/book">{words.emptyAction}</Link>} />}
      <ShedSection known={plan?.equipment.map(({ item }) => item) ?? []} />
      {plan && <EarlierNotes today={plan.asOf} />}
      {plan && <RulesMargin rules={plan.rules} />}
    </Page>
  );
}
