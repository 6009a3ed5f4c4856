import type { SpaceColony, SpaceList, SpaceYard } from '#shared/contract/space.ts';
import { yearOf, type Day } from '#shared/days.ts';
import { csvText } from '../../parts/csv.ts';
import { dayShort, dayTight, missing, number, percent } from '../../parts/format.ts';
import { words } from './words.ts';

/** True on a day on which any of it is asked about. */
export function isSeason({ adding, swarming, splits, asOf }: SpaceList): boolean {
  return adding.now || swarming.now || splitsOpen({ splits, asOf });
}

export function splitsOpen({ splits, asOf }: Pick<SpaceList, 'splits' | 'asOf'>): boolean {
  return asOf >= splits.from && splits.latest.some(({ past }) => !past);
}

/** Part of the combs that bees cover; null where either is not known. */
export function covered({ need: { bees, room } }: SpaceColony): number | null {
  return bees === null || room === null ? null : bees / room;
}

/** "18 of 20" frames; without the combs where they are not set against the bees of an old look. */
export function beesText({ need: { bees, room } }: SpaceColony): string {
  return room === null ? number(bees, 1) : words.beesOf(number(bees, 1), number(room, 1));
}

export function shareText(colony: SpaceColony): string {
  const share = covered(colony);
  return share === null ? missing : percent(share);
}

/** What is to be done about a colony's room, in a few words. */
export function roomText({ need: { say, add } }: SpaceColony): string {
  return add === null ? words.say[say] : words.add(add.count, add.box);
}

/** False where a risk would be called low while the record does not tell all of it. */
export function isRiskTold({ risk }: Pick<SpaceColony, 'risk'>): boolean {
  return risk !== null && (risk.level !== 'low' || risk.unknown.length === 0);
}

/** "high, 9 points"; what is low only because nobody has looked is not called low. */
export function riskText({ risk }: SpaceColony): string {
  if (risk === null) return missing;
  return isRiskTold({ risk }) ? words.riskOf(words.level[risk.level], risk.points) : words.notAllTold;
}

/** The day of a look, with its year where that is not the year of the list. */
export function seenText({ need: { look } }: SpaceColony, asOf: Day): string {
  return look !== null && yearOf(look) !== yearOf(asOf) ? dayTight(look) : dayShort(look);
}

export function nextLookText({ risk }: SpaceColony, asOf: Day): string {
  return risk === null ? missing : risk.nextLook < asOf ? words.overdue(dayShort(risk.nextLook)) : dayShort(risk.nextLook);
}

/** The ways there is still time for: "mated queen by 3 Jul, cell by 22 Jun" */
export function waysText({ splits }: SpaceList): string {
  return splits.latest.flatMap(({ way, day, past }) => (past ? [] : [`${words.wayShort[way]} by ${dayShort(day)}`])).join(', ');
}

export function wantsSomething({ need, risk }: SpaceColony): boolean {
  return need.say === 'add' || need.say === 'watch' || need.say === 'look first' || need.say === 'not told' || risk?.level === 'high' || risk?.level === 'some';
}

const roomOrder: readonly SpaceColony['need']['say'][] = ['add', 'watch', 'look first', 'not told', 'enough', 'out of season'];
const levels: readonly NonNullable<SpaceColony['risk']>['level'][] = ['high', 'some', 'low'];

/** High risk and no room first, then what is not known; of the same, as they stand. */
export function mostUrgentFirst(colonies: readonly SpaceColony[]): SpaceColony[] {
  const rank = ({ need, risk }: SpaceColony) => [risk?.level === 'high' || need.say === 'add' ? 0 : 1, risk === null ? levels.length : levels.indexOf(risk.level), roomOrder.indexOf(need.say), -(risk?.points ?? 0)];
  const ranked = colonies.map((colony) => ({ colony, rank: rank(colony) }));
  return ranked.toSorted((a, b) => a.rank.reduce((order, of, at) => order || of - (b.rank[at] ?? 0), 0)).map(({ colony }) => colony);
}

export interface SpaceCounts {
  readonly colonies: number;
  readonly want: number;
  readonly soon: number;
  readonly first: number;
  readonly high: number;
  readonly some: number;
  readonly split: number;
}

export function countsOf(colonies: readonly SpaceColony[]): SpaceCounts {
  const count = (is: (colony: SpaceColony) => boolean) => colonies.filter(is).length;
  return {
    colonies: colonies.length, want: count(({ need }) => need.say === 'add'), soon: count(({ need }) => need.say === 'watch'), first: count(({ need }) => need.say === 'look first' || need.say === 'not told'),
    high: count(({ risk }) => risk?.level === 'high'), some: count(({ risk }) => risk?.level === 'some'), split: count(({ split }) => split !== null),
  };
}

/** "2 medium supers of 10 frames": what a yard wants beside what lies there, to load. */
export function loadText(boxes: SpaceYard['boxes']): string {
  return boxes.flatMap(({ box, frames, wanted, inYard }) => (wanted > inYard ? [words.boxesOf(wanted - inYard, box, frames)] : [])).join('; ');
}

/** A line for every colony. */
export function spaceCsv(list: SpaceList): string {
  const rows = list.yards.flatMap(({ code, colonies }) =>
    colonies.map((colony) => {
      const { label, need, risk, split } = colony;
      const share = covered(colony);
      return [
        code, label, need.bees, need.room === null ? null : Math.round(need.room * 10) / 10, share === null ? null : Math.round(share * 100), need.look, need.say, need.add?.box ?? null, need.add?.count ?? null, need.reason,
        risk?.level ?? null, risk?.points ?? null, risk === null ? null : risk.reasons.map(({ words: said, points }) => `${said} (${points})`).join(' '), risk === null ? null : risk.unknown.join(' '), risk?.lastLook ?? null, risk?.nextLook ?? null,
        split === null ? null : split.ways.map((way) => words.wayShort[way]).join(', '), split?.brood ?? null,
      ];
    }));
  return csvText([
    'yard', 'colony', 'frames_bees', 'frames_room', 'covered_percent', 'seen_on', 'room', 'add_box', 'add_count', 'reason', 'swarm_risk', 'points', 'points_for', 'not_told', 'last_look', 'next_look_by', 'split_with', 'frames_brood',
  ], rows);
}
