/** The house rules by which a count is judged on a day: the phase of the season it lies in, and the threshold of each. */
export const thresholdNumbers: readonly string[] = [
  'mites.treat.increase', 'mites.treat.peak', 'mites.treat.decrease', 'mites.treat.dormantBrood', 'mites.treat.dormantBroodless',
  'mites.begins.increase', 'mites.begins.peak', 'mites.begins.decrease', 'mites.begins.dormant', 'treat.broodSeen',
];
