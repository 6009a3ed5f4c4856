import type { Together } from '#shared/contract/lossFactors.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { factorWords as words } from './factorWords.ts';

/** The model in words: one sentence for each thing that was held beside the others. */
export function TogetherPart({ parts }: { readonly parts: readonly Together[] }) {
  const note = useMarginNote();
  return (
    <>
      <h3>{words.together}</h3>
      {parts.map((part) => (
        <div key={part.heading} className="together" tabIndex={0} role="group" aria-label={part.heading} {...note(<TogetherNote part={part} />)}>
          {part.terms.length > 0 && (
            <p className="soft small">
              {part.heading}: {words.togetherBase(part.colonies, part.losses)}
            </p>
          )}
          {part.sentences.map((sentence) => (
            <p key={sentence} className="sentence factor-sentence">{sentence}</p>
          ))}
          {part.notes.map((one) => (
            <p key={one} className="soft small">{one}</p>
          ))}
        </div>
      ))}
    </>
  );
}

function TogetherNote({ part }: { readonly part: Together }) {
  return (
    <MarginPart heading={words.together}>
      {part.terms.length > 0 && (
        <p>
          {part.heading}: {words.togetherBase(part.colonies, part.losses)}
        </p>
      )}
      <p>{words.togetherNote}</p>
    </MarginPart>
  );
}
