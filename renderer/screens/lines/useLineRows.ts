import { useState } from 'react';
import { rowsAtATime, type LineGrouping, type LineRow, type LinesPicture } from '#shared/contract/lines.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { desk } from '../../desk/deskClient.ts';

/** Rows that came after those of the picture. */
interface Further {
  readonly lines: LinesPicture['lines'];
  readonly by: LineGrouping;
  readonly rows: readonly LineRow[];
}

/** How each line did, by one grouping: the first rows, and `load` for those that follow. */
export function useLineRows({ lines, rowCounts }: LinesPicture, by: LineGrouping): { readonly rows: readonly LineRow[]; readonly total: number; readonly load: () => void } {
  const day = useAsOf();
  const [further, setFurther] = useState<Further | null>(null);
  const added = further !== null && further.lines === lines && further.by === by ? further.rows : [];
  const rows = added.length === 0 ? lines[by] : [...lines[by], ...added];
  const load = () => {
    void desk.call('lines.rows', { by, from: rows.length, most: rowsAtATime, ...(day === null ? {} : { asOf: day }) }).then((answer) => {
      if (answer.ok) setFurther({ lines, by, rows: [...added, ...answer.value.rows] });
    });
  };
  return { rows, total: rowCounts[by], load };
}
