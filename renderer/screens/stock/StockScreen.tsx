import { useRead } from '../../desk/useDesk.ts';
import { Page } from '../../parts/Page.tsx';
import { StockParts } from '../../parts/StockParts.tsx';
import { EarlierNotes } from '../losses/EarlierNotes.tsx';
import { ShedSection } from './ShedSection.tsx';
import './stock.css';
import { words } from './words.ts';

/** What is there, and where. What to order stands on the page beside it. */
export function StockScreen() {
  const { data: plan } = useRead('order.plan', { source: 'package', hiveFrames: 10, united: 'lost' });
  return (
    <Page title={words.title} line={words.line} asOf={plan?.asOf}>
      <StockParts />
      <ShedSection known={plan?.equipment.map(({ item }) => item) ?? []} />
      {plan ? <EarlierNotes today={plan.asOf} /> : null}
    </Page>
  );
}
