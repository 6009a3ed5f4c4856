import { useState, type ReactNode } from 'react';
import type { LossFactors } from '#shared/contract/lossFactors.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { CausesSection } from './CausesSection.tsx';
import './factors.css';
import { FactorsSection } from './FactorsSection.tsx';
import { ReviewSection } from './ReviewSection.tsx';
import { reviewWords } from './reviewWords.ts';
import { SaySection } from './SaySection.tsx';
import { SeasonNotes } from './SeasonNotes.tsx';
import { useFactors, type Scope } from './useFactors.ts';

/** The second half of the review: what went with losses, the causes, what the numbers can say, and the notes. */
export function FactorParts({ season }: { readonly season: number }) {
  const [scope, setScope] = useState<Scope>('season');
  const factors = { season, scope };
  return (
    <>
      <ReviewSection id="factors">
        <Factors {...factors} show={(found) => <FactorsSection found={found} scope={scope} onScope={setScope} />} />
      </ReviewSection>
      <ReviewSection id="causes">
        <Factors {...factors} show={(found) => <CausesSection found={found} />} />
      </ReviewSection>
      <ReviewSection id="say">
        <Factors {...factors} show={(found) => <SaySection found={found} />} />
      </ReviewSection>
      <ReviewSection id="notes">
        <SeasonNotes key={season} season={season} />
      </ReviewSection>
    </>
  );
}

/** Three sections rest on one answer; it is asked for when the first of them comes near. */
function Factors({ season, scope, show }: { readonly season: number; readonly scope: Scope; show(found: LossFactors): ReactNode }) {
  const { found, fault } = useFactors(season, scope);
  if (found) return show(found);
  return fault ? <FaultNote fault={fault} /> : <p className="soft review-waiting">{reviewWords.reading}</p>;
}
