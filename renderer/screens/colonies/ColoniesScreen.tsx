import { Page } from '../../parts/Page.tsx';

export function ColoniesScreen() {
  return <Page title="Colonies" line="Every colony in the book." />;
}
