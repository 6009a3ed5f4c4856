import { NeedsNav } from '../../parts/NeedsNav.tsx';
import { Page } from '../../parts/Page.tsx';
import { words } from './words.ts';

/** What needs doing in the whole operation, the most urgent first. */
export function NeedsScreen() {
  return (
    <Page title={words.title} line={words.line}>
      <NeedsNav />
    </Page>
  );
}
