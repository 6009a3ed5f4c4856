import type { YardId } from '#shared/brands.ts';
import { NeedsNav } from '../../parts/NeedsNav.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { BreedersSection } from './BreedersSection.tsx';
import { CalendarSection } from './CalendarSection.tsx';
import { CandidatesSection } from './CandidatesSection.tsx';
import './queens.css';
import { words } from './queensWords.ts';

/** Which colonies want a new queen, the days of one, and whose daughters are worth raising. */
export function QueensScreen({ at }: { readonly at: YardId | null }) {
  return (
    <Page title={words.title} line={words.line}>
      <NeedsNav />
      <CandidatesSection at={at} />
      <CalendarSection />
      <BreedersSection />
      <MarginContent heading={words.marginHow}>
        {words.marginText.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <RulesLink room="queens" />
      </MarginContent>
    </Page>
  );
}
