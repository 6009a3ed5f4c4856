import type { FamilyLane, LinesPicture } from '#shared/contract/lines.ts';
import { addDays, daysBetween, yearOf, type Day } from '#shared/days.ts';
import { linearScale, px } from './scale.ts';
import { fitted, textWidth } from './text.ts';
import { familyWords as words } from './familyWords.ts';

/** Height of a lane and of the axis above the lanes, in pixels. */
export const laneHeight = 28;
export const headHeight = 26;

export type FamilyPicture = Pick<LinesPicture, 'asOf' | 'seasons' | 'lanes' | 'links'>;

export interface LaneMark {
  readonly kind: 'queen' | 'move';
  readonly x: number;
  readonly title: string;
  /** Null where the next mark leaves no room; a queen is then drawn without her colour, which never stands without its word. */
  readonly text: string | null;
  readonly colour: string | null;
}

export interface PlacedLane {
  readonly lane: FamilyLane;
  readonly row: number;
  /** The lane's line, from the top of the lanes. */
  readonly y: number;
  readonly from: number;
  readonly to: number;
  readonly began: boolean;
  readonly ended: boolean;
  readonly label: { readonly x: number; readonly text: string };
  readonly end: { readonly x: number; readonly text: string } | null;
  readonly marks: readonly LaneMark[];
  /** The first lane of a family. */
  readonly founds: boolean;
}

export interface PlacedLink {
  readonly kind: 'split' | 'combine';
  readonly key: string;
  readonly x: number;
  readonly fromY: number;
  readonly toY: number;
}

export interface FamilyGeometry {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  /** Of all lanes, without the axis. */
  readonly height: number;
  readonly winters: readonly { readonly from: number; readonly to: number }[];
  readonly names: readonly { readonly x: number; readonly text: string }[];
  readonly lanes: readonly PlacedLane[];
  readonly links: readonly PlacedLink[];
}

const left = 92;
const rightRoom = 136;

/** Where everything stands, in pixels, over all seasons or one of them; the axis ends a little after the last day of the record. */
export function familyGeometry(picture: FamilyPicture, season: number | null, width: number): FamilyGeometry {
  const seasons = season === null ? picture.seasons : picture.seasons.filter((one) => one.season === season);
  const [first, last] = [seasons[0], seasons.at(-1)];
  const right = width - rightRoom;
  if (first === undefined || last === undefined) return { width, left, right, height: 0, winters: [], names: [], lanes: [], links: [] };
  const lastDay = picture.lanes.reduce((most, { until }) => (until > most ? until : most), picture.asOf);
  const shortly = addDays(lastDay, 21);
  const until = season === null && shortly < last.until ? shortly : last.until;
  const time = linearScale([0, daysBetween(first.from, until)], [left, right]);
  const at = (day: Day) => px(time(daysBetween(first.from, day < first.from ? first.from : day > until ? until : day)));
  const inside = (day: Day) => day >= first.from && day < until;
  const y = (row: number) => row * laneHeight + 19;

  const lanes = picture.lanes.map((lane, row): PlacedLane => {
    const [from, to] = [at(lane.start), at(lane.until)];
    const ended = lane.how !== 'alive' && inside(lane.until);
    return {
      lane, row, y: y(row), from, to, ended, began: inside(lane.start),
      label: { x: from - 8, text: fitted(lane.label, from - 12) },
      end: ended ? { x: to + 9, text: fitted(words.ending(lane.how, lane.causes, lane.intoLabel), width - to - 12) } : null,
      // The words of an end stand where those of the last mark would run into them.
      marks: marksOf(lane, at, inside, ended ? to + 9 : width),
      founds: picture.lanes[row - 1]?.family !== lane.family,
    };
  });
  const rows = new Map(lanes.map(({ lane, row }) => [lane.id, row]));
  return {
    width, left, right, lanes, height: lanes.length * laneHeight,
    winters: seasons.filter(({ winter }) => winter < until).map((one) => ({ from: at(one.winter), to: at(one.until) })),
    names: seasons.flatMap((one) => [
      { from: at(one.from), to: at(one.winter), texts: [words.summer(yearOf(one.from)), String(yearOf(one.from))] },
      { from: at(one.winter), to: at(one.until), texts: [words.winter] },
    ]).flatMap(({ from, to, texts }) => {
      const text = texts.find((one) => textWidth(one) <= to - from);
      return text === undefined ? [] : [{ x: px((from + to) / 2), text }];
    }),
    links: picture.links.filter(({ day }) => inside(day)).flatMap(({ kind, from, to, day }) => {
      const [fromRow, toRow] = [rows.get(from), rows.get(to)];
      return fromRow === undefined || toRow === undefined ? [] : [{ kind, key: `${kind} ${from} ${to}`, x: at(day), fromY: y(fromRow), toY: y(toRow) }];
    }),
  };
}

/** The links that pass the lanes from `first` to `last`. */
export function linksAmong(links: readonly PlacedLink[], first: number, last: number): PlacedLink[] {
  const [top, bottom] = [first * laneHeight, (last + 1) * laneHeight];
  return links.filter(({ fromY, toY }) => Math.max(fromY, toY) >= top && Math.min(fromY, toY) <= bottom);
}

function marksOf(lane: FamilyLane, at: (day: Day) => number, inside: (day: Day) => boolean, until: number): LaneMark[] {
  const all = [
    ...lane.queens.map(({ day, queen }) => ({
      kind: 'queen' as const, day, colour: queen.colour, title: words.queen(day, queen),
      texts: queen.colour === null || queen.year === null ? [] : [`${queen.colour} ${queen.year}`, queen.colour],
    })),
    ...lane.moves.map(({ day, to, toName }) => ({ kind: 'move' as const, day, colour: null, title: words.moved(day, toName), texts: [words.movedTo(to)] })),
  ].filter(({ day }) => inside(day)).toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  return all.map(({ kind, day, colour, title, texts }, place) => {
    const next = all[place + 1];
    const x = at(day);
    const room = (next === undefined ? until : at(next.day)) - x - 8;
    return { kind, x, title, colour, text: texts.find((text) => textWidth(text) <= room) ?? null };
  });
}
