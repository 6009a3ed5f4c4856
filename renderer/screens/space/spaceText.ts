import type { SpaceColony, SpaceList, SpaceYard } from '#shared/contract/space.ts';
import type { Day } from '#shared/days.ts';
import { csvText } from '../../parts/csv.ts';
import { dayShort, missing, number, percent } from '../../parts/format.ts';
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

/** "18 of 20", in frames; a dash for what is not known. */
export function beesText({ need: { bees, room } }: SpaceColony): string {
  return bees === null ? missing : `${number(bees, 1)} of ${room === null ? missing : number(room, 1)}`;
}

export function shareText(colony: SpaceColony): string {
  const share = covered(colony);
  return share === null ? missing : percent(share);
}

/** What is to be done about a colony's room, in a few words. */
export function roomText({ need: { say, add } }: SpaceColony): string {
  return add === null ? words.say[say] : words.add(add.count, add.box);
}

export function riskText({ risk }: SpaceColony): string {
  return risk === null ? missing : words.riskOf(words.level[risk.level], risk.points);
}

export function nextLookText({ risk }: SpaceColony, asOf: Day): string {
  return risk === null ? missing : risk.nextLook < asOf ? words.overdue(dayShort(risk.nextLook)) : dayShort(risk.nextLook);
}

/** "mated queen by 3 Jul, cell by 22 Jun" */
export function waysText({ split }: SpaceColony, { splits }: SpaceList): string {
  return splits.latest.flatMap(({ way, day }) => (split?.ways.includes(way) === true ? [`${words.wayShort[way]} by ${dayShort(day)}`] : [])).join(', ');
}

export function wantsSomething({ need, risk }: SpaceColony): boolean {
  return need.say === 'add' || need.say === 'watch' || need.say === 'look first' || need.say === 'not told' || risk?.level === 'high' || risk?.level === 'some';
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

/** "2 medium super, 10 frames": what a yard wants, to load. */
export function boxesText(boxes: SpaceYard['boxes']): string {
  return boxes.map(({ box, frames, wanted }) => `${number(wanted)} × ${words.boxName(box, frames)}`).join('; ');
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
