import { Page } from '../../parts/Page.tsx';

export function BookScreen() {
  return <Page title="Book" line="Where the records are kept, and how they come in and go out." />;
}
