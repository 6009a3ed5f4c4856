import { useState, type ReactNode } from 'react';
import { useWidth } from './useWidth.ts';
import { words } from './words.ts';

export interface FigureProps {
  /** Draws the picture for the room there is. */
  readonly picture: (width: number) => ReactNode;
  readonly table: ReactNode;
  /** Names what is switched, for a reader of the page: "Alive since 1 October". */
  readonly name: string;
  readonly least?: number;
  readonly most?: number;
}

/** A picture and its table twin, one at a time, with the switch between them. */
export function Figure({ picture, table, name, least = 300, most = 760 }: FigureProps) {
  const [asTable, setAsTable] = useState(false);
  const [box, width] = useWidth(least, most);
  return (
    <div ref={box} className="figure">
      <button type="button" className="link figure-switch no-print" onClick={() => setAsTable(!asTable)}>
        {asTable ? words.asPicture : words.asTable}
        <span className="visually-hidden"> ({name})</span>
      </button>
      {asTable ? (
        <div className="scroll figure-table" tabIndex={0} role="group" aria-label={name}>
          {table}
        </div>
      ) : (
        picture(width)
      )}
    </div>
  );
}
