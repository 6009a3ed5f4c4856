import { hiveParts } from '#shared/itemWords.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Page } from '../../parts/Page.tsx';
import { StockParts } from '../../parts/StockParts.tsx';
import { EarlierNotes } from '../losses/EarlierNotes.tsx';
import { ShedSection } from './ShedSection.tsx';
import './stock.css';
import { words } from './words.ts';

/** What is there, and where. What to order stands on the page beside it. */
export function StockScreen() {
  const { data: table } = useRead('stock.table', {});
  return (
    <Page title={words.title} line={words.line} asOf={table?.asOf}>
      <StockParts />
      <ShedSection known={[...hiveParts]} />
      {table ? <EarlierNotes today={table.asOf} /> : null}
    </Page>
  );
}
