import type { LossFactors } from '#shared/contract/lossFactors.ts';
import { factorWords as words } from './factorWords.ts';

/** How far the numbers reach, in three sentences. */
export function SaySection({ found }: { readonly found: LossFactors }) {
  return (
    <section className="section say" aria-label={words.sayHeading}>
      <h2>{words.sayHeading}</h2>
      {found.say.map((sentence) => (
        <p key={sentence} className="sentence factor-sentence">{sentence}</p>
      ))}
    </section>
  );
}
