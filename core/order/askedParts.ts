import type { DecisionQuestion } from '#shared/contract/decision.ts';
import type { DecisionFacts } from './decideOrder.ts';
import { hiveRules } from '#core/stock/hives.ts';
import { hivesInSpring, isForPart, type EquipmentQuestion } from './equipment.ts';
import type { SupersWanted } from './supersFromYield.ts';
import type { SurvivalForecast } from './survivalForecast.ts';

/** What equipment is asked for so many hives. */
export function equipmentAsked(hives: number, forecast: SurvivalForecast, supers: SupersWanted, question: DecisionQuestion, facts: DecisionFacts): EquipmentQuestion {
  return { hives, ...hivesInSpring(forecast), frames: question.hiveFrames, usual: hiveRules(facts.rules).usual, mediums: supers.each, there: facts.there };
}

/** Pieces of a part that were ordered and have not come. */
export function partsOnOrder(item: string, { hiveFrames }: DecisionQuestion, { onOrder }: DecisionFacts): number {
  return [...onOrder.equipment].reduce((sum, [ordered, pieces]) => (isForPart(ordered, item, hiveFrames) ? sum + Math.floor(pieces) : sum), 0);
}
