import { useState } from 'react';
import { Link } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import type { MitesYard } from '#shared/contract/mites.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { NeedsNav } from '../../parts/NeedsNav.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { FitsSection } from './FitsSection.tsx';
import './mites.css';
import { ResultsSection } from './ResultsSection.tsx';
import { YardSection } from './YardSection.tsx';
import { summary } from './mitesText.ts';
import { YardsTable } from './YardsTable.tsx';
import { words } from './words.ts';

/** Mites of every yard on a day: what the counts say, what could be given, what it did before. The yard that the address names is the one opened. */
export function MitesScreen({ at }: { readonly at: YardId | null }) {
  const { data, fault } = useRead('mites.page', {}, { keep: true });
  const [asked, setAsked] = useState<YardId | null>(at);
  const yards = data?.yards ?? [];
  const chosen = yards.find(({ id }) => id === asked) ?? firstOf(yards);
  return (
    <Page title={words.title} line={words.line} asOf={data?.asOf}>
      <NeedsNav />
      <FaultNote fault={fault} />
      {data && yards.length === 0 ? <Empty sentence={words.empty} action={<Link href="/colonies">{words.emptyNext}</Link>} /> : null}
      {data === undefined || chosen === undefined ? null : (
        <>
          <section className="section" aria-label={words.yards}>
            <p className="sentence">{summary(yards)}</p>
            <YardsTable yards={yards} asOf={data.asOf} chosen={chosen.id} onChoose={setAsked} />
          </section>
          <YardSection key={`yard ${chosen.id}`} yard={chosen} />
          <FitsSection key={`fits ${chosen.id}`} yard={chosen} />
          <ResultsSection />
          <MarginContent heading={words.marginHow}>
            <p>{words.marginHowText}</p>
            <p>{words.marginSample}</p>
            <RulesLink room="mites" />
          </MarginContent>
        </>
      )}
    </Page>
  );
}

/** The yard that is shown first: the likeliest above its threshold. */
function firstOf(yards: readonly MitesYard[]): MitesYard | undefined {
  return yards.toSorted((a, b) => Number(b.speaks === 'now') - Number(a.speaks === 'now') || (b.above ?? -1) - (a.above ?? -1))[0];
}
