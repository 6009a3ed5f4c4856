import { Link } from 'wouter';
import type { NeedLine } from '#shared/contract/needs.ts';
import { dayText } from '../../parts/format.ts';
import { MarginPart } from '../../parts/Margin.tsx';
import { RuleNumbers } from '../../parts/RuleNumbers.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { words } from './words.ts';

const mostRecords = 6;

/** What the margin says of one line: the records, what to take along, how it was ranked, the house's numbers with their source. */
export function NeedNote({ line }: { readonly line: NeedLine }) {
  const records = line.members.flatMap(({ key, colony, yard, records: own }) => own.map((record, at) => ({ ...record, key: `${key} ${at}`, of: colony?.label ?? yard?.name ?? '' })));
  const weather = words.weather[line.weather];
  return (
    <>
      <MarginPart heading={line.act}>
        <p>{line.because}</p>
        {line.people > 1 ? <p>{words.people(line.people)}</p> : null}
        {weather === '' ? null : <p>{weather}</p>}
        {line.caution === null ? null : <p>{line.caution}</p>}
      </MarginPart>
      {records.length === 0 ? null : (
        <MarginPart heading={words.records}>
          <ul className="rules">
            {records.slice(0, mostRecords).map(({ key, of, day, words: says, entry }) => (
              <li key={key}>
                {of === '' ? null : <><bdi>{of}</bdi>, </>}
                {entry === null ? dayText(day) : <Link href={`/entries/${entry}`}>{dayText(day)}</Link>}: <bdi>{says}</bdi>
              </li>
            ))}
          </ul>
          {records.length > mostRecords ? <p className="soft">{words.more(records.length - mostRecords)}</p> : null}
        </MarginPart>
      )}
      {line.bring.length === 0 ? null : (
        <MarginPart heading={words.take}>
          <p>{line.bring.map(words.item).join(', ')}</p>
        </MarginPart>
      )}
      <MarginPart heading={words.rank}>
        <p>{line.rank}</p>
      </MarginPart>
      <MarginPart heading={words.numbers}>
        <RuleNumbers numbers={line.sources} />
        <RulesLink room="attention" />
      </MarginPart>
    </>
  );
}
