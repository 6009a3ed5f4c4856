import type { OrderPlan } from '#shared/contract/order.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';

/** One part of a hive: how many a producing colony stands on. Names are those that stock rows use. */
export interface Part {
  readonly item: string;
  readonly perColony: number;
}

/** Bill of materials of one producing colony in a double-deep layout, by the house rules. `frames` is 8 or 10 a box. */
export function billOfMaterials(rules: RuleValues, frames: 8 | 10): Part[] {
  const deeps = numberRule(rules, 'order.deeps');
  const mediums = numberRule(rules, 'order.mediums');
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
  /** Colonies lost, whose hives come back. */
  readonly deadOuts: number;
  readonly frames: 8 | 10;
  /** Pieces of an item by the stock rows: in the shed, and in all yards; null where no row names the item. */
  readonly stock: (item: string) => { readonly shed: number; readonly yards: number } | null;
}

/** Hives of survivors and of dead-outs in a middling spring, as yards and drawn comb are reckoned too. */
export function hivesInSpring({ living, mean }: { readonly living: number; readonly mean: number }): { survivors: number; deadOuts: number } {
  const survivors = Math.min(living, Math.round(mean));
  return { survivors, deadOuts: living - survivors };
}

/** Supers and their frames come off for the winter, so where stock rows tell of them they are counted by those rows alone. */
function comesOff(item: string): boolean {
  return item === 'medium super' || item === 'medium frame';
}

/** What is needed, what is there, and what is to be ordered, part by part. */
export function equipmentList(question: EquipmentQuestion, rules: RuleValues): (OrderPlan['equipment'][number] & { readonly toMend: number })[] {
  const spare = numberRule(rules, 'order.spare');
  const sound = numberRule(rules, 'order.deadOutSound');
  return billOfMaterials(rules, question.frames).map((part) => {
    const need = neededParts(part, question.hives, spare);
    const stock = question.stock(part.item);
    const byRows = stock !== null && comesOff(part.item);
    const onHives = byRows ? Math.max(0, Math.floor(stock.yards)) : Math.floor(question.survivors * part.perColony + 1e-9);
    const fromDeadOuts = byRows ? 0 : Math.floor(question.deadOuts * part.perColony * sound + 1e-9);
    const shed = Math.max(0, Math.floor(stock?.shed ?? 0));
    const have = onHives + fromDeadOuts + shed;
    const spareWords = part.item.endsWith('frame') || spare === 0 ? '' : `, and ${Math.round(spare * 100)} % to spare`;
    return {
      item: part.item, perColony: part.perColony, need, onHives, fromDeadOuts, toMend: byRows ? 0 : Math.ceil(question.deadOuts * part.perColony - 1e-9) - fromDeadOuts, shed, have, order: Math.max(0, need - have),
      reason: `${question.hives} ${question.hives === 1 ? 'hive' : 'hives'} at ${part.perColony} each${spareWords}: ${need}. ${
        byRows ? `By the stock rows ${onHives} are in the yards and ${shed} in the shed.` : `In a middling spring ${onHives} with the survivors, ${fromDeadOuts} back from dead-outs (${Math.round(sound * 100)} % sound), ${shed} in the shed.`
      }`,
    };
  });
}
