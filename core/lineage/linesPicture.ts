import type { ColonyId } from '#shared/brands.ts';
import { lanesAtATime, rowsAtATime, type LanesPart, type LinesPicture } from '#shared/contract/lines.ts';
import type { Day } from '#shared/days.ts';
import { periodDays, seasonName, seasonOf, type Borders, type Season } from '#shared/seasons.ts';
import { whole as wholeOf, type Slices } from '#shared/slices.ts';
import { compareNames } from '#shared/nameOrder.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Names } from '#core/journal/kindRules.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { familyLanes, partOfLanes, shownLanes, type LaneFilter, type Lanes } from './familyLanes.ts';
import { familyName, lineRecord } from './lineRecord.ts';

export interface LinesAsked extends Omit<LaneFilter, 'days'> {
  readonly season?: Season | undefined;
}

export interface LinesOf {
  readonly states: readonly ColonyState[];
  readonly byId: ReadonlyMap<ColonyId, ColonyState>;
  readonly yardList: readonly Yard[];
  readonly names: Names;
  readonly borders: Borders;
}

/** What every view of the lines shares: all lanes, and how each line did. */
export interface WholeLines {
  readonly all: Lanes;
  readonly families: LinesPicture['families'];
  readonly lines: LinesPicture['lines'];
}

export function wholeLines(of: LinesOf, today: Day): WholeLines {
  return wholeOf(wholeLinesInSlices(of, today));
}

/** The same, part by part. */
export function* wholeLinesInSlices({ states, byId, names, borders }: LinesOf, today: Day): Slices<WholeLines> {
  const all = familyLanes(states, names, today);
  yield;
  const familyOf = new Map(all.lanes.flatMap(({ id, family }) => { const founder = byId.get(family); return founder === undefined ? [] : [[id, founder] as const]; }));
  const families = familiesOf(all, byId, today);
  yield;
  return { all, families, lines: yield* lineRecord(states, familyOf, borders, today) };
}

/** Descent and record of all lines, and the lanes that were asked for. A line or yard that is not in the book has no lanes. */
export function linesPicture(of: LinesOf, asked: LinesAsked, today: Day, whole: WholeLines = wholeLines(of, today)): LinesPicture {
  const { byId, yardList, names, borders } = of;
  const { all, families, lines } = whole;
  const shown = lanesAsked(of, asked, whole);
  return {
    asOf: today,
    seasons: seasonsOf(all, borders),
    yards: yardList.map(({ id, code, name }) => ({ id, code, name })),
    families,
    ...shown,
    laneCount: shown.lanes.length,
    sentence: sentenceOf(shown, all, byId, asked, names, today),
    lines,
    rowCounts: { family: lines.family.length, bees: lines.bees.length, queen: lines.queen.length },
  };
}

/** Of a picture what a window shows first; a picture that is no longer than that stays as it is. */
export function firstView(picture: LinesPicture, asked: LinesAsked): LinesPicture {
  const { families, lines } = picture;
  const part = partOfLanes(picture, 0, lanesAtATime);
  const here = new Set(part.lanes.map(({ family }) => family));
  return {
    ...picture,
    ...part,
    families: families.filter(({ id }, place) => place < lanesAtATime || id === asked.family || here.has(id)),
    lines: { ...lines, family: lines.family.slice(0, rowsAtATime), bees: lines.bees.slice(0, rowsAtATime), queen: lines.queen.slice(0, rowsAtATime) },
  };
}

/** The lanes asked for from one on, with the founding lines they belong to. */
export function lanesFrom(of: LinesOf, asked: LinesAsked, from: number, most: number, whole: WholeLines): LanesPart {
  const part = partOfLanes(lanesAsked(of, asked, whole), from, most);
  const here = new Set(part.lanes.map(({ family }) => family));
  return { ...part, families: whole.families.filter(({ id }) => here.has(id)) };
}

function lanesAsked({ byId, borders }: LinesOf, { family, yard, season }: LinesAsked, { all }: WholeLines): Lanes {
  return shownLanes(all, byId, { family, yard, days: season === undefined ? undefined : periodDays(season, 'year', borders) });
}

function seasonsOf({ lanes }: Lanes, borders: Borders): LinesPicture['seasons'] {
  const [first, ...rest] = lanes;
  if (first === undefined) return [];
  const from = rest.reduce((least, { start }) => (start < least ? start : least), first.start);
  const until = rest.reduce((most, lane) => (lane.until > most ? lane.until : most), first.until);
  const season = seasonOf(from, borders);
  return Array.from({ length: seasonOf(until, borders) - season + 1 }, (_, at) => {
    const year = periodDays(season + at, 'year', borders);
    return { season: season + at, from: year.from, winter: periodDays(season + at, 'winter', borders).from, until: year.until };
  });
}

function familiesOf({ lanes }: Lanes, byId: ReadonlyMap<ColonyId, ColonyState>, today: Day): LinesPicture['families'] {
  return [...Map.groupBy(lanes, ({ family }) => family)]
    .flatMap(([id, own]) => {
      const founder = byId.get(id);
      return founder === undefined ? [] : [{ id, name: familyName(founder), colonies: own.length, alive: livingOf(own, byId, today) }];
    })
    .toSorted((a, b) => b.colonies - a.colonies || compareNames(a.name, b.name));
}

function livingOf(lanes: Lanes['lanes'], byId: ReadonlyMap<ColonyId, ColonyState>, today: Day): number {
  return lanes.filter(({ id }) => { const state = byId.get(id); return state !== undefined && aliveOn(state, today); }).length;
}

function sentenceOf(shown: Lanes, all: Lanes, byId: ReadonlyMap<ColonyId, ColonyState>, { family, yard, season }: LinesAsked, names: Names, today: Day): string {
  const counted = (value: number) => `${value} ${value === 1 ? 'colony' : 'colonies'}`;
  const living = (lanes: Lanes['lanes']) => { const alive = livingOf(lanes, byId, today); return `${alive === 0 ? 'none' : alive} of them alive now`; };
  if (shown.lanes.length === 0) return 'No colony fits.';
  const founder = family === undefined ? undefined : byId.get(family);
  const place = `${yard === undefined ? '' : ` at ${names.yard(yard).name}`}${season === undefined ? '' : ` in ${seasonName(season)}`}`;
  const whole = `the whole operation has had ${counted(all.lanes.length)}, ${living(all.lanes)}`;
  if (founder !== undefined) return `The line of ${founder.label}${place}: ${counted(shown.lanes.length)}, ${living(shown.lanes)}; ${whole}.`;
  const lines = new Set(shown.lanes.map((lane) => lane.family)).size;
  return `${counted(shown.lanes.length)}${place} from ${lines} founding ${lines === 1 ? 'line' : 'lines'}, ${living(shown.lanes)}.`;
}
