import { encode } from 'uqr';

/** What a tag's code holds, as plain text that says what it is without the program: the colony's number in the book, then its label. */
export function tagText({ id, label }: { readonly id: number; readonly label: string }): string {
  return `Outyard colony ${id}: ${label}`;
}

export interface TagCode {
  /** Modules along one side, the quiet zone of 4 with them (ISO/IEC 18004). */
  readonly size: number;
  /** The dark modules as one SVG path. */
  readonly path: string;
}

/** A QR code, UTF-8, error correction M or better where it fits as well: a seventh of it may be dirty. */
export function tagCode(text: string): TagCode {
  const { data, size } = encode(text, { ecc: 'M', boostEcc: true, border: 4 });
  const runs: string[] = [];
  data.forEach((row, y) => {
    for (let x = 0; x < size; x += 1) {
      if (row[x] !== true) continue;
      const from = x;
      while (row[x + 1] === true) x += 1;
      runs.push(`M${from} ${y}h${x - from + 1}v1h${from - x - 1}z`);
    }
  });
  return { size, path: runs.join('') };
}
