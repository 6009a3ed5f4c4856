import type { HouseRule } from '#shared/contract/order.ts';

const practice = 'common practice, no source';

/** The numbers behind what is compared in "What went with it". */
export const factorRuleDefinitions: readonly Omit<HouseRule, 'value'>[] = [
  { key: 'losses.cox.perCoefficient', label: 'Losses wanted for each thing that is held beside the others', room: 'losses', unit: 'losses', type: 'number', default: 10, range: [5, 50], source: 'Custom of statistics: 5 to 10 losses for each coefficient', confidence: 'from memory' },
  { key: 'losses.strength.frames', label: 'Strong in autumn begins at', room: 'losses', unit: 'frames of bees', type: 'number', default: 8, range: [2, 30], source: 'House choice: a deep box nearly full of bees before the cluster forms', confidence: practice },
];
