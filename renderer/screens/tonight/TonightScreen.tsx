import { Page } from '../../parts/Page.tsx';

export function TonightScreen() {
  return <Page title="Tonight" line="What was seen today, typed in one go." />;
}
