import { Link } from 'wouter';
import type { RuleTally, TallyShare } from '#shared/contract/tally.ts';
import { rate } from '#shared/figures.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { RuleNumbers } from '../../parts/RuleNumbers.tsx';
import { words } from './words.ts';

const shareText = ({ count, of, interval }: TallyShare) => rate(count, of, interval);

/** One rule: what it asked for, what the past seasons say of it, and in the margin all its figures and numbers. */
export function RuleLine({ tally }: { readonly tally: RuleTally }) {
  const note = useMarginNote();
  const { title, answered, says, rooms } = tally;
  return (
    <li {...note(() => <TallyNote tally={tally} />)}>
      <div className="tally-head">
        <span className="needs-act">{title}</span>
        {answered.of === 0 ? null : (
          <span className="number">
            {shareText(answered)} <span className="soft">{words.done}</span>
          </span>
        )}
      </div>
      <p>{says}</p>
      <div className="needs-acts">
        <span className="soft small">{words.asked(tally)}</span>
        {rooms.slice(0, 1).map(({ key }) => (
          <Link key={key} href={`/book/rules/${key}`} aria-label={words.changeOf(title)}>
            {words.change}
          </Link>
        ))}
      </div>
    </li>
  );
}

function TallyNote({ tally: { title, why, harm, answered, done, left, others, foretold, answers, sources, rooms } }: { readonly tally: RuleTally }) {
  const figures: (readonly [string, TallyShare | null])[] = [[words.inTime, answered], ...(harm === null ? [] : ([[words.harmDone(harm), done], [words.harmLeft(harm), left], [words.harmOthers(harm), others], [words.foretold(harm), foretold]] as const))];
  return (
    <>
      <MarginPart heading={title}>
        <p>{why}</p>
        <p>{words.answers(answers.join(', '))}</p>
        {harm === null ? null : <p>{words.late}</p>}
      </MarginPart>
      <MarginPart heading={words.figures}>
        <ul className="rules">
          {figures.map(([name, share]) =>
            share === null || share.of === 0 ? null : (
              <li key={name}>
                <p>{name}:</p>
                <p className="number tally-share">{shareText(share)}</p>
              </li>
            ),
          )}
        </ul>
      </MarginPart>
      <MarginPart heading={words.numbers}>
        <RuleNumbers numbers={sources} />
        <ul className="rules">
          {rooms.map(({ key, heading }) => (
            <li key={key}>
              <Link href={`/book/rules/${key}`}>{heading}</Link>
            </li>
          ))}
        </ul>
      </MarginPart>
    </>
  );
}
