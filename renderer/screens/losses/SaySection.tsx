import type { LossFactors } from '#shared/contract/lossFactors.ts';

/** How far the numbers reach, in three sentences. */
export function SaySection({ found }: { readonly found: LossFactors }) {
  return (
    <div className="say">
      {found.say.map((sentence) => (
        <p key={sentence} className="sentence factor-sentence">{sentence}</p>
      ))}
    </div>
  );
}
