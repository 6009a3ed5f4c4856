import type { DecisionQuestion, OrderAnswer, PlannedPart, PlannedWare } from '#shared/contract/decision.ts';
import type { Offer } from '#shared/contract/offers.ts';
import { equipmentAsked, partsOnOrder } from './askedParts.ts';
import type { DecisionFacts, PreparedOrder } from './decideOrder.ts';
import { equipmentList, isForPart } from './equipment.ts';
import { offeredWords } from './offerCheck.ts';
import type { SolvedOrder } from './solveOrder.ts';
import { SPRINGS } from './survivalForecast.ts';
import { samplingError } from './scenarios.ts';
import { hivesWanted, queensOnOrder, splitsFrom } from './orderProblem.ts';
import { splitColumn } from './springTable.ts';
import { wareReason } from './decisionWords.ts';

/** A solved order in the words and lists of the contract. */
export function orderAnswer(order: SolvedOrder, prepared: PreparedOrder, question: DecisionQuestion, facts: DecisionFacts): OrderAnswer {
  const { problem, forecast } = prepared;
  const { choice } = order;
  const code = (y: number) => facts.yards[y]?.code ?? '';
  const byYard = (counts: readonly number[]) => counts.flatMap((count, y) => (count === 0 || code(y) === '' ? [] : [{ yard: code(y), count }]));
  const bees = beeLines(order, prepared, facts.offers);
  const terms = { take: problem.splits.take, most: (survivors: number) => splitsFrom(survivors, problem.splits.perSurvivor) };
  const exact = forecast.scenarios.exact === null ? null : splitColumn(forecast.scenarios.exact, problem.target, choice.splits, choice.bought, terms);
  return {
    bees,
    equipment: partLines(order, prepared, question, facts),
    supers: prepared.supers.sentence,
    bought: choice.bought,
    splits: choice.splits,
    splitsByYard: byYard(choice.splitsByYard),
    placed: byYard(choice.placedByYard),
    moves: choice.outByYard.flatMap((out, y) => {
      const into = choice.inByYard[y] ?? 0;
      return out === 0 && into === 0 ? [] : [{ yard: code(y), out, into }];
    }),
    queensForSplits: problem.splits.queens === 'bought' ? choice.splits : 0,
    queensForOld: problem.requeen,
    packagesOnComb: choice.onComb,
    hours: order.hours,
    cash: order.cash,
    deposit: bees.reduce((sum, { deposit }) => sum + (deposit ?? 0), 0),
    costs: { ...order.costs },
    total: order.total,
    expectedMissing: order.expectedMissing,
    expectedSurplus: order.expectedSurplus,
    expectedSplits: order.expectedMade,
    chanceShort: order.chanceShort,
    samplingError: samplingError(shortBySpring(order, prepared)),
    chanceShortExact: exact?.probabilityShort[choice.bought] ?? null,
    solver: { ...order.solver, springs: SPRINGS },
  };
}

/** Chance of being short in each drawn spring, which splits leave open. */
function shortBySpring(order: SolvedOrder, { problem, forecast }: PreparedOrder): Float64Array {
  const terms = { take: problem.splits.take, most: (survivors: number) => splitsFrom(survivors, problem.splits.perSurvivor) };
  const known = new Map<number, number>();
  return Float64Array.from(forecast.scenarios.survivors, (survivors) => {
    const before = known.get(survivors);
    if (before !== undefined) return before;
    const shares = Array.from({ length: survivors + 1 }, (_, k) => (k === survivors ? 1 : 0));
    const chance = splitColumn(shares, problem.target, order.choice.splits, order.choice.bought, terms).probabilityShort[order.choice.bought] as number;
    known.set(survivors, chance);
    return chance;
  });
}

function beeLines(order: SolvedOrder, prepared: PreparedOrder, offers: readonly Offer[]): PlannedWare[] {
  return prepared.problem.bees.flatMap((bee): PlannedWare[] => {
    const chosen = order.choice.wares.get(bee.key);
    if (chosen === undefined || bee.key === queensOnOrder) return [];
    const offer = offers.find(({ key }) => key === bee.key) ?? null;
    return [{
      offer: bee.key, seller: offer?.seller ?? null, kind: bee.kind, words: offer === null ? `${bee.kind}s` : offeredWords(offer.what),
      quantity: chosen.quantity, each: chosen.each, total: chosen.quantity * chosen.each,
      deposit: offer?.deposit === undefined || offer.deposit === null ? null : offer.deposit * chosen.quantity,
      orderBy: bee.orderBy, delivery: [offer?.deliveryFrom ?? null, offer?.deliveryUntil ?? null], reason: wareReason(bee, chosen, order, prepared),
    }];
  });
}

function partLines(order: SolvedOrder, prepared: PreparedOrder, question: DecisionQuestion, facts: DecisionFacts): PlannedPart[] {
  const { forecast, problem } = prepared;
  const listed = equipmentList(equipmentAsked(hivesWanted(problem), forecast, prepared.supers, question, facts), facts.rules);
  return listed.map((part): PlannedPart => {
    const packs = facts.offers.flatMap((offer) => {
      const { what } = offer;
      const chosen = order.choice.wares.get(offer.key);
      if (what.kind !== 'equipment' || !isForPart(what.item, part.item, question.hiveFrames) || chosen === undefined) return [];
      return [{ offer: offer.key, seller: offer.seller, packSize: what.packSize, packs: chosen.quantity, each: chosen.each, total: chosen.quantity * chosen.each, orderBy: offer.orderBy }];
    });
    const ordered = packs.reduce((sum, { packSize, packs: number }) => sum + packSize * number, 0);
    const { item, need, onHives, fromDeadOuts, toMend, shed, yards, reason } = part;
    const onOrder = partsOnOrder(item, question, facts);
    const have = part.have + onOrder;
    const short = Math.max(0, need - have);
    return { item, need, onHives, fromDeadOuts, shed, yards, onOrder, have, toMend, order: short, packs, notOffered: Math.max(0, short - ordered), reason: onOrder === 0 ? reason : `${reason} ${onOrder} are on order.` };
  });
}
