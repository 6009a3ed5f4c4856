import { useState } from 'react';
import { Link } from 'wouter';
import type { YieldGrouping } from '#shared/contract/yields.ts';
import type { MassUnit } from '#shared/units.ts';
import { useCalmRead } from '../../desk/useDesk.ts';
import { BehindSection, BehindTable } from '../../parts/BehindSection.tsx';
import { counted, dayTight, number } from '../../parts/format.ts';
import { words as partWords } from '../../parts/words.ts';
import { poundsText } from './yieldText.ts';
import { yieldWords as words } from './yieldWords.ts';

export interface OpenedGroup {
  /** Null: all of them. */
  readonly group: string | null;
  readonly title: string;
}

interface BehindProps extends OpenedGroup {
  readonly by: YieldGrouping;
  readonly season: number | null;
  readonly unit: MassUnit;
  readonly onClose: () => void;
}

const page = 50;

/** The colonies behind a figure with what each gave, the highest first. */
export function YieldBehind({ by, season, unit, group, title, onClose }: BehindProps) {
  const [most, setMost] = useState(page);
  const { data, fault } = useCalmRead('yields.behind', { by, key: group, season, most }, { keep: true });
  return (
    <BehindSection title={title} close={words.close} onClose={onClose} fault={fault}>
      {data === undefined ? null : (
        <>
          <BehindTable title={title}>
            <thead>
              <tr>
                <th scope="col">{words.colony}</th>
                <th scope="col">{words.season}</th>
                <th scope="col">{words.yard}</th>
                <th scope="col">{words.days}</th>
                <th scope="col" className="number">
                  {words.weighed(unit)}
                </th>
              </tr>
            </thead>
            <tbody>
              {data.rows.map(({ colony, label, season: of, yard, lb, days, together }) => (
                <tr key={`${colony} ${of} ${together}`}>
                  <th scope="row">
                    <Link href={`/colonies/${colony}`}>{label}</Link>
                  </th>
                  <td>{of}</td>
                  <td>{yard}</td>
                  <td>{days.map((day) => dayTight(day)).join(', ')}</td>
                  <td className="number">{together ? words.withYard : poundsText(lb, unit)}</td>
                </tr>
              ))}
            </tbody>
          </BehindTable>
          {data.total > data.rows.length && (
            <p className="soft small">
              {words.moreBehind(number(data.rows.length), counted(data.total, 'colony-season', 'colony-seasons'))}{' '}
              {most < 2000 && (
                <button type="button" className="link" onClick={() => setMost(Math.min(2000, most * 4))}>
                  {partWords.behind.showMore}
                </button>
              )}
            </p>
          )}
        </>
      )}
    </BehindSection>
  );
}
