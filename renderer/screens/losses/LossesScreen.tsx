import { Page } from '../../parts/Page.tsx';

export function LossesScreen() {
  return <Page title="Losses" line="What was lost, when and where." />;
}
