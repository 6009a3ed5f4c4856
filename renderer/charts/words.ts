export const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

export const words = {
  atRisk: 'Number at risk',
  noColonies: 'no colonies',
  daysSinceStart: 'days since the colony’s start',
  yearsSinceStart: 'years since the colony’s start',
  day: 'Day',
  group: 'Group',
  lost: 'Lost',
  alive: 'Alive %',
  plausible: '95 % range',
  survivors: 'Survivors',
  chance: 'Chance %',
  atLeast: 'This many or more %',
  target: (target: number) => `target ${target}`,
  eightyPercent: (low: number, high: number) => (low === high ? `four winters in five: ${low}` : `four winters in five: ${low} to ${high}`),
  asTable: 'As a table',
  asPicture: 'As a picture',
  survivalAlt: (labels: readonly string[]) => `Share of colonies alive over time: ${labels.join(', ')}. The same figures stand in the table.`,
  survivorsAlt: (low: number, high: number, target: number) =>
    `Chances of each number of survivors next spring: in four winters of five from ${low} to ${high}; the target is ${target}. The same figures stand in the table.`,
  intervalAlt: (label: string, rate: number, low: number, high: number) => `${label}: ${rate} %, plausible from ${low} to ${high} %`,
  noRate: (label: string) => `${label}: no rate`,
  survivorsAxis: 'colonies alive next spring',
} as const;
