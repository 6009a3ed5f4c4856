import { FaultNote } from '../../parts/FaultNote.tsx';
import { CausesSection } from './CausesSection.tsx';
import './factors.css';
import { FactorsSection } from './FactorsSection.tsx';
import { SaySection } from './SaySection.tsx';
import { SeasonNotes } from './SeasonNotes.tsx';
import { useFactors } from './useFactors.ts';

/** The second half of the review: what went with losses, the causes, what the numbers can say, and the notes. */
export function FactorParts({ season }: { readonly season: number }) {
  const { found, fault, scope, setScope } = useFactors(season);
  return (
    <>
      <FaultNote fault={fault} />
      {found && (
        <>
          <FactorsSection found={found} scope={scope} onScope={setScope} />
          <CausesSection found={found} />
          <SaySection found={found} />
        </>
      )}
      <SeasonNotes key={season} season={season} />
    </>
  );
}
