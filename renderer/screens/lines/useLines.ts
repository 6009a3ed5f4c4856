import { useMemo, useState } from 'react';
import type { ColonyId, YardId } from '#shared/brands.ts';
import type { LinesPicture } from '#shared/contract/lines.ts';
import { seasonName } from '#shared/seasons.ts';
import { useRead } from '../../desk/useDesk.ts';

export interface LinesView {
  /** The book it was chosen in: ids of one mean nothing in another. */
  readonly book: string;
  readonly family: ColonyId | null;
  readonly yard: YardId | null;
  readonly season: number | null;
}

/** Kept while the window lives, so that the picture comes back as it was left, and is printed as it was shown. */
let lastView: LinesView | null = null;

export function useLinesView(book: string): [LinesView, (change: Partial<Omit<LinesView, 'book'>>) => void] {
  const fresh: LinesView = { book, family: null, yard: null, season: null };
  const [kept, setKept] = useState<LinesView>(lastView ?? fresh);
  const view = kept.book === book ? kept : fresh;
  return [
    view,
    (change) => {
      lastView = { ...view, ...change };
      setKept(lastView);
    },
  ];
}

/** The lanes that the view asks for. */
export function useLines({ family, yard, season }: LinesView) {
  const input = useMemo(() => ({ ...(family === null ? {} : { family }), ...(yard === null ? {} : { yard }), ...(season === null ? {} : { season }) }), [family, yard, season]);
  return useRead('lines.picture', input, { keep: true });
}

/** What is shown, for a heading or a file's name: ", G01, package 2021, Larch Bend, 2025–26"; nothing where all is. */
export function viewInWords(picture: LinesPicture, { family, yard, season }: LinesView): string {
  const parts = [picture.families.find(({ id }) => id === family)?.name, picture.yards.find(({ id }) => id === yard)?.name, season === null ? undefined : seasonName(season)];
  return parts.filter((part) => part !== undefined).map((part) => `, ${part}`).join('');
}
