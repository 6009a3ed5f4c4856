import type { ColonyId, YardId } from '#shared/brands.ts';
import type { FamilyLane, LaneLink } from '#shared/contract/lines.ts';
import type { Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { colonySentence, queenView } from './colonyWords.ts';

export interface Lanes {
  readonly lanes: FamilyLane[];
  readonly links: LaneLink[];
}

/** Which lanes are wanted: of one founding line, of colonies that lived on a day of [from, until), that stood in a yard (then, or ever). */
export interface LaneFilter {
  readonly family?: ColonyId | undefined;
  readonly yard?: YardId | undefined;
  readonly days?: { readonly from: Day; readonly until: Day } | undefined;
}

/**
 * One lane for every colony: families together, the oldest founder first, each colony above its daughters. The
 * youngest daughter comes first, so that the line of an older one, which leaves the mother's lane further left,
 * passes no lane of the younger ones. A colony whose mother is not in the record founds a family. Linear in colonies.
 */
export function familyLanes(states: readonly ColonyState[], names: Names, today: Day): Lanes {
  const byId = new Map(states.map((state) => [state.id, state]));
  const daughters = Map.groupBy(states.filter(({ mother }) => mother !== null && byId.has(mother)), ({ mother }) => mother);
  const founders = states.filter(({ mother }) => mother === null || !byId.has(mother)).toSorted(byStart);
  const lanes: FamilyLane[] = [];
  for (const founder of founders) {
    const waiting = [{ state: founder, depth: 0 }];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      const { state, depth } = next;
      lanes.push(laneOf(state, founder.id, depth, names, today));
      // What is put on the pile last is taken first.
      for (const daughter of (daughters.get(state.id) ?? []).toSorted(byStart)) waiting.push({ state: daughter, depth: depth + 1 });
    }
  }
  return { lanes, links: linksBetween(lanes, byId) };
}

/** The wanted lanes in their order, and the links whose both ends are among them. */
export function shownLanes({ lanes, links }: Lanes, states: ReadonlyMap<ColonyId, ColonyState>, filter: LaneFilter): Lanes {
  const { family, yard, days } = filter;
  const shown = lanes.filter((lane) => {
    if (family !== undefined && lane.family !== family) return false;
    if (days !== undefined && (lane.start >= days.until || lane.until < days.from)) return false;
    return yard === undefined || (states.get(lane.id)?.stays.some((stay) => stay.yard === yard && (days === undefined || (stay.from < days.until && (stay.until === null || stay.until >= days.from)))) ?? false);
  });
  const here = new Set(shown.map(({ id }) => id));
  return { lanes: shown, links: links.filter(({ from, to }) => here.has(from) && here.has(to)) };
}

/**
 * The lanes from place `from` on, at most `most` of them, and the links of which the later end is among them: parts one
 * after another, put together, are the whole. O(lanes + links).
 */
export function partOfLanes({ lanes, links }: Lanes, from: number, most: number): Lanes {
  if (from === 0 && lanes.length <= most) return { lanes, links };
  const places = new Map(lanes.map(({ id }, place) => [id, place]));
  const later = (link: LaneLink) => Math.max(places.get(link.from) ?? -1, places.get(link.to) ?? -1);
  return {
    lanes: lanes.slice(from, from + most),
    links: links.filter((link) => {
      const place = later(link);
      return place >= from && place < from + most;
    }),
  };
}

export function byStart(a: ColonyState, b: ColonyState): number {
  return a.start < b.start ? -1 : a.start > b.start ? 1 : a.startPlace - b.startPlace || a.id - b.id;
}

function laneOf(state: ColonyState, family: ColonyId, depth: number, names: Names, today: Day): FamilyLane {
  const [first, ...later] = state.stays;
  return {
    id: state.id, label: state.label, family, mother: state.mother, motherLabel: state.mother === null ? null : names.colony(state.mother), depth, origin: state.origin, start: state.start,
    // A colony entered for a day to come is no longer than that day.
    until: state.end ?? (state.start > today ? state.start : today),
    how: state.how, causes: [...state.causes], into: state.into, intoLabel: state.into === null ? null : names.colony(state.into), sentence: colonySentence(state, names),
    yard: first === undefined ? '' : names.yard(first.yard).code,
    queens: state.reigns.map((reign) => ({ day: reign.since, queen: queenView(reign) })),
    moves: later.map((stay) => ({ day: stay.from, to: names.yard(stay.yard).code, toName: names.yard(stay.yard).name })),
  };
}

function linksBetween(lanes: readonly FamilyLane[], byId: ReadonlyMap<ColonyId, ColonyState>): LaneLink[] {
  return lanes.flatMap(({ id, mother, into, start, until }) => {
    const links: LaneLink[] = [];
    if (mother !== null && byId.has(mother)) links.push({ kind: 'split', from: mother, to: id, day: start });
    if (into !== null && byId.has(into)) links.push({ kind: 'combine', from: id, to: into, day: until });
    return links;
  });
}
