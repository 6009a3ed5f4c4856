import type { DeadOutJudgement, DeadOutPlace } from '#shared/contract/deadOut.ts';
import { deadOutSigns, deadOutSignNames, type DeadOutSign } from '#shared/deadOut.ts';
import { MarginContent, MarginPart } from '../../parts/Margin.tsx';
import { words } from './words.ts';

type Suggestion = DeadOutJudgement['suggestions'][number];

/** What is seen, what it speaks for and what the book knows, while nothing else is asked about. */
export function DeadOutMargin({ place, judgement, signs }: { readonly place: DeadOutPlace; readonly judgement: DeadOutJudgement | undefined; readonly signs: readonly DeadOutSign[] }) {
  return (
    <>
      <MarginContent heading={words.marginSigns}>
        {signs.length === 0 ? <p>{words.marginNone}</p> : <p>{sayings(signs)}.</p>}
      </MarginContent>
      <MarginContent heading={judgement?.stop ? words.marginStop : words.margin}>
        {judgement?.stop ? <p>{judgement.stop.why}</p> : null}
        {(judgement?.suggestions ?? []).map((one) => (
          <p key={one.cause}>
            <strong>{one.cause}</strong>: {one.reasons.map(({ sentence }) => sentence).join(' ')}
          </p>
        ))}
        {judgement?.stop ? null : <p className="soft">{words.neverDecides}</p>}
      </MarginContent>
      <MarginContent heading={words.marginRecord}>
        {place.record.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </MarginContent>
    </>
  );
}

/** One suggestion: each reason with the signs it rests on and where the rule comes from. */
export function SuggestionNote({ suggestion }: { readonly suggestion: Suggestion }) {
  return (
    <MarginPart heading={`${suggestion.cause}: ${words.weights[suggestion.weight]}`}>
      {suggestion.reasons.map((reason) => (
        <div key={reason.sentence}>
          <p>{reason.sentence}</p>
          <p className="soft small">
            {words.fulfilled}: {sayings(reason.seen)}. {words.source(reason.source, reason.footing)}
          </p>
        </div>
      ))}
      <p className="soft">{words.neverDecides}</p>
    </MarginPart>
  );
}

function sayings(signs: readonly DeadOutSign[]): string {
  return deadOutSignNames.filter((sign) => signs.includes(sign)).map((sign) => deadOutSigns[sign]).join('; ');
}
