import { Page } from '../../parts/Page.tsx';

export function StockScreen() {
  return <Page title="Stock and orders" line="What is there, and what to order before spring." />;
}
