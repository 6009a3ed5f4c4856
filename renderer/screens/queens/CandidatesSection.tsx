import { useMemo } from 'react';
import { Link } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import { useCalmRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayShort, dayText } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { QueenMark } from '../../parts/QueenMark.tsx';
import { SourcesPart } from './SourcesPart.tsx';
import { words } from './queensWords.ts';

/** Colonies that want a new queen, by yard; the one that was asked for first. */
export function CandidatesSection({ at }: { readonly at: YardId | null }) {
  const { data, fault } = useCalmRead('queens.candidates', {}, { keep: true });
  const note = useMarginNote();
  const rows = useMemo(() => (data?.yards ?? []).toSorted((a, b) => Number(b.id === at) - Number(a.id === at)).flatMap((yard) => yard.colonies.map((colony) => ({ yard, colony }))), [data, at]);
  const { shown, more } = useFirstRows(rows, words.requeen);
  const count = rows.length;
  return (
    <section className="section" aria-label={words.requeen}>
      <h2>{words.requeen}</h2>
      <FaultNote fault={fault} />
      {data ? <p className="sentence">{count === 0 ? words.requeenNone(data.living) : words.requeenSome(count, data.living, dayShort(data.season.from), dayShort(data.season.until))}</p> : null}
      {data && count > 0 ? (
        <div className="scroll" tabIndex={0} role="group" aria-label={words.requeen}>
          <table className="queens-wanted">
            <caption className="visually-hidden">{words.requeen}</caption>
            <thead>
              <tr>
                <th scope="col">{words.colony}</th>
                <th scope="col">{words.queen}</th>
                <th scope="col">{words.why}</th>
              </tr>
            </thead>
            {[...Map.groupBy(shown, ({ yard }) => yard)].map(([yard, own]) => (
              <tbody key={yard.id} className={yard.id === at ? 'queens-asked' : undefined}>
                <tr>
                  <th scope="rowgroup" colSpan={3} className="queens-yard">
                    {yard.code} {yard.name} <span className="soft">{words.ofYard(yard.colonies.length, yard.standing)}</span>
                  </th>
                </tr>
                {own.map(({ colony: { id, label, queen, reasons } }) => (
                  <tr
                    key={id}
                    {...note(() => (
                      <>
                        <MarginPart heading={`${label}: ${words.records}`}>
                          <ul>
                            {reasons.flatMap(({ records }) =>
                              records.map((record) => (
                                <li key={`${record.day} ${record.words}`}>
                                  {dayText(record.day)}: {record.entry === null ? record.words : <Link href={`/entries/${record.entry}`}>{record.words}</Link>}
                                </li>
                              )),
                            )}
                          </ul>
                        </MarginPart>
                        <SourcesPart sources={data.sources} room="needs" />
                      </>
                    ))}
                  >
                    <th scope="row">
                      <Link href={`/colonies/${id}`}>{label}</Link>
                    </th>
                    <td>{queen === null ? <QueenMark queen={null} /> : <Link href={`/queens/${queen.id}`}><QueenMark queen={queen} /></Link>}</td>
                    <td>
                      {reasons.map(({ because, detail }) => (
                        <span key={because} className="queens-line">
                          {because} <span className="soft">{detail}</span>
                        </span>
                      ))}
                    </td>
                  </tr>
                ))}
              </tbody>
            ))}
          </table>
          {more}
        </div>
      ) : null}
    </section>
  );
}
