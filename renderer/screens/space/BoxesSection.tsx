import { useId } from 'react';
import { Link } from 'wouter';
import type { SpaceList, SpaceYard } from '#shared/contract/space.ts';
import { missing, number } from '../../parts/format.ts';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { words } from './words.ts';

/** What the yards want to be loaded, against what lies there and in the shed, with the caution about lifting. */
export function BoxesSection({ list, yards }: { readonly list: SpaceList; readonly yards: readonly SpaceYard[] }) {
  const heading = useId();
  const rows = yards.flatMap(({ id, code, boxes }) => boxes.map((one) => ({ key: `${id} ${one.box} ${one.frames}`, code, ...one })));
  const { shown, more } = useFirstRows(rows, words.boxes);
  if (!list.adding.now) return null;
  const sizes = list.shed.filter(({ box, frames }) => rows.some((row) => row.box === box && row.frames === frames));
  const counted = sizes.flatMap(({ box, frames, free }) => (free === null ? [] : [words.boxesOf(free, box, frames)]));
  const unknown = sizes.filter(({ free }) => free === null);
  return (
    <section className="section" aria-labelledby={heading}>
      <h2 id={heading}>{words.boxes}</h2>
      {rows.length === 0 ? (
        <p className="soft">{words.boxesNone}</p>
      ) : (
        <>
          <p className="caution">{list.lifting}</p>
          <div className="scroll" tabIndex={0} role="group" aria-labelledby={heading}>
            <table className="tight space-boxes" aria-labelledby={heading}>
              <thead>
                <tr>
                  <th scope="col">{words.yard}</th>
                  <th scope="col">{words.box}</th>
                  {[words.wanted, words.there, words.fromShed, words.lack].map((head) => (
                    <th key={head} scope="col" className="number">
                      {head}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {shown.map(({ key, code, box, frames, wanted, inYard, fromShed, lack }) => (
                  <tr key={key}>
                    <th scope="row">{code}</th>
                    <td>{words.boxName(box, frames)}</td>
                    <td className="number">{number(wanted)}</td>
                    <td className="number">{number(inYard)}</td>
                    <td className="number">{lack === null ? missing : number(fromShed)}</td>
                    <td className={lack === null || lack === 0 ? 'number' : 'number needs'}>{number(lack)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
            {more}
          </div>
          {counted.length === 0 ? null : <p className="soft">{words.shedHas(counted.join('; '))}</p>}
          {unknown.map(({ box, frames }) => (
            <p key={`${box} ${frames}`} className="soft">
              {words.shedUnknown(words.boxName(box, frames))} <Link href="/stock">{words.countShed}</Link>
            </p>
          ))}
          <p className="soft space-seasons">{words.boxesEntered}</p>
        </>
      )}
    </section>
  );
}
