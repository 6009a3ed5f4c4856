import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { partFor } from '#core/stock/hives.ts';
import { itemOf, readItem } from '#core/stock/itemName.ts';
import type { Available } from '#core/stock/stockTable.ts';

/** One part of a hive: how many a producing colony stands on. Names are those that stock rows use. */
export interface Part {
  readonly item: string;
  readonly perColony: number;
}

/** Bill of materials of one producing colony in a double-deep layout, by the house rules. `frames` is 8 or 10 a box. */
export function billOfMaterials(rules: RuleValues, frames: 8 | 10, mediums = numberRule(rules, 'order.mediums')): Part[] {
  const deeps = numberRule(rules, 'order.deeps');
  return [
    { item: 'deep box', perColony: deeps },
    { item: 'deep frame', perColony: deeps * frames },
    { item: 'medium super', perColony: mediums },
    { item: 'medium frame', perColony: mediums * frames },
    { item: 'bottom board', perColony: numberRule(rules, 'order.bottomBoards') },
    { item: 'entrance reducer', perColony: numberRule(rules, 'order.entranceReducers') },
    { item: 'inner cover', perColony: numberRule(rules, 'order.innerCovers') },
    { item: 'outer cover', perColony: numberRule(rules, 'order.outerCovers') },
    { item: 'stand', perColony: numberRule(rules, 'order.stands') },
    { item: 'feeder', perColony: numberRule(rules, 'order.feeders') },
    { item: 'queen excluder', perColony: numberRule(rules, 'order.excluders') },
  ].filter((part) => part.perColony > 0);
}

/** Needed with spares: colonies times parts, a share more, rounded up; frames go with their boxes and take no spare of their own. */
export function neededParts(part: Part, hives: number, spare: number): number {
  return Math.ceil(hives * partsEach(part, spare) - 1e-9);
}

/** Parts for each hive, spares included. */
export function partsEach(part: Part, spare: number): number {
  return part.perColony * (1 + (part.item.endsWith('frame') ? 0 : spare));
}

export interface EquipmentQuestion {
  /** Hives to fit out. */
  readonly hives: number;
  /** Colonies that keep the hive they stand in. */
  readonly survivors: number;
  /** Colonies that will be lost, whose hives come back. */
  readonly deadOuts: number;
  readonly frames: 8 | 10;
  /** Frames of a box whose name says nothing of it. */
  readonly usual: 8 | 10;
  /** Medium supers for each hive; the house rule where it is left out. */
  readonly mediums?: number;
  /** What the equipment account has of an item; null where no stock row names it. */
  readonly there: (item: string) => Available | null;
}

/** Hives of survivors and of dead-outs in a middling spring, as yards and drawn comb are reckoned too. */
export function hivesInSpring({ living, mean }: { readonly living: number; readonly mean: number }): { survivors: number; deadOuts: number } {
  const survivors = Math.min(living, Math.round(mean));
  return { survivors, deadOuts: living - survivors };
}

/** One part: what is needed, what is there, what is to be ordered. `have` is what can be used in spring. */
export interface PartLine {
  readonly item: string;
  readonly perColony: number;
  readonly need: number;
  readonly onHives: number;
  readonly fromDeadOuts: number;
  /** Waiting to be mended, and of the dead-outs what is not sound. */
  readonly toMend: number;
  readonly shed: number;
  /** Free in a yard. */
  readonly yards: number;
  readonly have: number;
  readonly order: number;
  readonly reason: string;
}

/** What is needed, what is there, and what is to be ordered, part by part. */
export function equipmentList(question: EquipmentQuestion, rules: RuleValues): PartLine[] {
  const { hives, frames, usual } = question;
  const spare = numberRule(rules, 'order.spare');
  const sound = numberRule(rules, 'order.deadOutSound');
  return billOfMaterials(rules, frames, question.mediums).map(({ item, perColony }) => {
    const need = neededParts({ item, perColony }, hives, spare);
    const found = springParts({ item: partFor(item, frames, usual), perColony }, question, sound);
    const have = found.onHives + found.fromDeadOuts + found.shed + found.yards;
    const spareWords = item.endsWith('frame') || spare === 0 ? '' : `, and ${Math.round(spare * 100)} % to spare`;
    const { words, ...counts } = found;
    return {
      item: partFor(item, frames, usual), perColony, need, ...counts, have, order: Math.max(0, need - have),
      reason: `${hives} ${hives === 1 ? 'hive' : 'hives'} at ${perColony} each${spareWords}: ${need}. ${words}`,
    };
  });
}

type Found = Pick<PartLine, 'onHives' | 'fromDeadOuts' | 'toMend' | 'shed' | 'yards'> & { readonly words: string };

/**
 * What is there of a part in a middling spring. By the account: what hives carry is shared among survivors and dead-outs;
 * what waits to be checked comes back like a dead-out's. An item that no stock row names is taken to stand under every
 * colony as the bill of materials has it, and nowhere else.
 */
function springParts({ item, perColony }: Part, { survivors, deadOuts, frames, usual, there }: EquipmentQuestion, sound: number): Found {
  const percent = `${Math.round(sound * 100)} % sound`;
  const account = there(item);
  const otherSize = partFor(itemOf(item), frames === 8 ? 10 : 8, usual);
  const other = otherSize === item ? null : there(otherSize);
  if (account === null && other === null) {
    const dead = deadOuts * perColony;
    const [onHives, fromDeadOuts] = [whole(survivors * perColony), whole(dead * sound)];
    return {
      onHives, fromDeadOuts, toMend: Math.ceil(dead - 1e-9) - fromDeadOuts, shed: 0, yards: 0,
      words: `No stock row names it, so each hive is taken to have its own and none to lie in the shed: in a middling spring ${onHives} with the survivors, ${fromDeadOuts} back from dead-outs (${percent}). Count what is there, and the plan goes by that.`,
    };
  }
  const living = survivors + deadOuts;
  const carried = account?.onHives ?? 0;
  const stay = living === 0 ? 0 : (carried * survivors) / living;
  const back = carried - stay + (account?.toCheck ?? 0);
  // A hive of the other size keeps its own parts; only what would fit is counted of what lies free.
  const elsewhere = living === 0 ? 0 : ((other?.onHives ?? 0) * survivors) / living;
  const [onHives, fromDeadOuts] = [whole(stay + elsewhere), whole(back * sound)];
  const inRepair = whole(account?.toMend ?? 0);
  const [shed, yards] = [Math.max(0, whole(account?.shed ?? 0)), Math.max(0, whole(account?.yards ?? 0))];
  const lost = Math.ceil(back - 1e-9) - fromDeadOuts;
  const unfit = whole((other?.shed ?? 0) + (other?.yards ?? 0) + (other?.toCheck ?? 0));
  return {
    onHives, fromDeadOuts, toMend: lost + inRepair, shed, yards,
    words: [
      `By the equipment account ${whole(carried)} are on hives and ${whole(account?.toCheck ?? 0)} with dead-outs to check: in a middling spring ${onHives} stay with the survivors and ${fromDeadOuts} come back (${percent}).`,
      `${shed} lie free in the shed${yards > 0 ? ` and ${yards} in the yards` : ''}.`,
      ...(inRepair > 0 ? [`${inRepair} wait to be mended and are not counted; mending them is cheaper than buying.`] : []),
      ...(unfit > 0 ? [`${unfit} more are for hives of ${frames === 8 ? 10 : 8} frames.`] : []),
    ].join(' '),
  };
}

function whole(count: number): number {
  return Math.floor(count + 1e-9);
}

/** Whether something on offer or on order is that part of a hive of so many frames; a name that says nothing of its size fits either. */
export function isForPart(typed: string, item: string, frames: 8 | 10): boolean {
  const one = readItem(typed);
  return one.item === itemOf(item) && (one.frames === null || one.frames === frames);
}
