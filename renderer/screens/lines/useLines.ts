import { startTransition, useCallback, useMemo, useState } from 'react';
import type { ColonyId, YardId } from '#shared/brands.ts';
import { lanesAtATime, type LanesPart, type LinesPicture } from '#shared/contract/lines.ts';
import type { Fault } from '#shared/faults.ts';
import { seasonName } from '#shared/seasons.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { desk } from '../../desk/deskClient.ts';
import { useRead, type Reading } from '../../desk/useDesk.ts';

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

export interface LinesReading extends Reading<LinesPicture> {
  /** Shows further lanes below those that are there; null where all are. */
  readonly more: (() => void) | null;
  /** The picture with every lane, for paper and files; undefined where the desk refused, which `fault` then says. */
  readonly whole: () => Promise<LinesPicture | undefined>;
}

/** Lanes a call where all are wanted. */
const atOnce = 2000;

/** The lanes that the view asks for: the first of them, and as many more as were called for. */
export function useLines({ family, yard, season }: LinesView): LinesReading {
  const input = useMemo(() => ({ ...(family === null ? {} : { family }), ...(yard === null ? {} : { yard }), ...(season === null ? {} : { season }) }), [family, yard, season]);
  const day = useAsOf();
  const reading = useRead('lines.picture', useMemo(() => ({ ...input, view: 'first' as const }), [input]), { keep: true });
  const [grown, setGrown] = useState<{ readonly from: LinesPicture; readonly picture: LinesPicture } | null>(null);
  const [refused, setRefused] = useState<{ readonly from: LinesPicture; readonly fault: Fault } | null>(null);
  const { data: first, stale } = reading;
  // What was added belongs to the answer it was added to, and goes with it.
  const data = grown !== null && grown.from === first ? grown.picture : first;

  const upTo = useCallback(
    async (lanes: number, most: number): Promise<LinesPicture | undefined> => {
      if (first === undefined || data === undefined) return undefined;
      let picture = data;
      // What is shown may still answer the choice before; parts of the next would not fit it.
      if (stale && picture.lanes.length < picture.laneCount) return undefined;
      while (picture.lanes.length < Math.min(lanes, picture.laneCount)) {
        const answer = await desk.call('lines.lanes', { ...input, ...(day === null ? {} : { asOf: day }), from: picture.lanes.length, most });
        if (!answer.ok) {
          setRefused({ from: first, fault: answer });
          return undefined;
        }
        if (answer.value.lanes.length === 0) break;
        picture = joined(picture, answer.value);
      }
      return picture;
    },
    [first, data, stale, input, day],
  );
  const more = useCallback(() => {
    if (first === undefined || data === undefined) return;
    void upTo(data.lanes.length + lanesAtATime, lanesAtATime).then((picture) => {
      if (picture !== undefined) startTransition(() => setGrown({ from: first, picture }));
    });
  }, [first, data, upTo]);
  const whole = useCallback(() => upTo(Infinity, atOnce), [upTo]);
  const complete = data === undefined || data.lanes.length >= data.laneCount;
  return { ...reading, data, fault: reading.fault ?? (refused !== null && refused.from === first ? refused.fault : undefined), more: complete || stale ? null : more, whole };
}

function joined(picture: LinesPicture, part: LanesPart): LinesPicture {
  const known = new Set(picture.families.map(({ id }) => id));
  return {
    ...picture,
    lanes: [...picture.lanes, ...part.lanes],
    links: [...picture.links, ...part.links],
    families: [...picture.families, ...part.families.filter(({ id }) => !known.has(id))],
  };
}

/** What is shown, for a heading or a file's name: ", G01, package 2021, Larch Bend, 2025–26"; nothing where all is. */
export function viewInWords(picture: LinesPicture, { family, yard, season }: LinesView): string {
  const parts = [picture.families.find(({ id }) => id === family)?.name, picture.yards.find(({ id }) => id === yard)?.name, season === null ? undefined : seasonName(season)];
  return parts.filter((part) => part !== undefined).map((part) => `, ${part}`).join('');
}
