import { Page } from '../../parts/Page.tsx';

export function ColonyScreen({ id }: { readonly id: string }) {
  return <Page title={`Colony ${id}`} line="Its story." />;
}
