import { Page } from '../../parts/Page.tsx';

export function OrderPrint() {
  return <Page title="Order" line="What to order before spring." />;
}
