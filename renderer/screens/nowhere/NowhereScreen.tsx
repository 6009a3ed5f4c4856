import { Link } from 'wouter';
import { Page } from '../../parts/Page.tsx';
import { words } from '../../parts/words.ts';

export function NowhereScreen() {
  return (
    <Page title={words.nowhere} line={words.nowhereLine}>
      <p>
        <Link href="/tonight">{words.toTonight}</Link>
      </p>
    </Page>
  );
}
