import type { CountedRate, Grouping } from '#shared/contract/lossSections.ts';
import type { United } from '#shared/contract/values.ts';
import type { Period } from '#shared/seasons.ts';

/** What the numbered sections of the season-end review say by themselves. */
export const reviewWords = {
  contents: 'Contents of the review',
  reading: 'Reading this part of the book…',
  line: 'What was lost, when and where, and how sure the numbers are. Each figure opens the colonies behind it.',

  definitions: 'Loss by the two published definitions',
  definition: 'Counted as',
  turnover: { winter: 'Winter, US survey rule', summer: 'Summer, US survey rule', year: 'Whole year, US survey rule' } satisfies Record<Period, string>,
  cohort: 'Winter, COLOSS rule',
  parts: { dead: 'dead or empty', queen: 'queen problem', disaster: 'natural disaster' },
  mean: 'Mean of yards %',
  turnoverNote:
    'The rule of the US national survey: at risk are the colonies at the start and all that were split off, bought or caught, less those sold or given away; lost is what of them is no longer there at the end. A united colony is no longer there.',
  cohortNote:
    'The rule of the COLOSS survey: of the colonies wintered, those that died or stood empty, those with a queen problem that could not be mended, and those taken by a natural disaster. Each wintered colony is followed by itself, so what came during the winter is left out.',
  cohortLeft: (sold: number, given: number, united: number, came: number) => {
    const left = [sold > 0 ? `${sold} sold` : '', given > 0 ? `${given} given away` : '', united > 0 ? `${united} united` : ''].filter((part) => part !== '').join(', ');
    const gone = left === '' ? 'None of the wintered colonies was sold, given away or united during the winter.' : `Left the wintered colonies alive during the winter: ${left}. The COLOSS rule counts them as not lost.`;
    return came === 0 ? gone : `${gone} ${came === 1 ? 'One colony' : `${came} colonies`} came during the winter and ${came === 1 ? 'is' : 'are'} not counted by it.`;
  },
  partsNote: 'By the causes you entered: a failed queen is a queen problem; flood, bear or vandal is a disaster; every other loss, one without a cause too, is dead or empty.',
  methods: {
    none: 'Nothing was at risk, so there is no range.',
    wilson: 'Wilson’s 95 % range: one or two yards cannot show how much yards differ.',
    'clopper-pearson': 'The exact 95 % range (Clopper-Pearson), as none or all were lost.',
    'quasi-binomial': '95 % range that allows for yards sharing their fate (quasi-binomial, t).',
  } satisfies Record<CountedRate['method'], string>,
  meanOf: (mean: string, range: string, median: string, low: string, high: string, units: number) =>
    `Mean of ${units === 1 ? 'one yard' : `${units} yards`}: ${mean}${range === '' ? '' : ` ${range}`}; middle one ${median}, from ${low} to ${high}. Every yard weighs the same here, so small ones count for more.`,
  unitedHere: (united: United) => (united === 'lost' ? 'United colonies count as lost.' : 'United colonies are taken out of the base.'),
  lossTitle: (name: string, part: 'atRisk' | 'lost') => `${name}: ${part === 'lost' ? 'lost' : 'at risk'}`,

  less: 'This season less it',
  thisSeason: 'this one',
  lessNote: 'This season’s rate less that one’s, in colonies of a hundred, with its 95 % range (Newcombe). A range on both sides of nought may be chance. Colonies of a yard share their fate, so it is rather too narrow.',

  movedYards: (count: number) =>
    `A colony counts here in the yard where it ended: by this rule a move is a sale in one yard and a purchase in the other. ${count === 1 ? 'One was' : `${count} were`} moved during the winter; sections 3 and 4 count ${count === 1 ? 'it' : 'them'} where the winter found ${count === 1 ? 'it' : 'them'}.`,

  published: 'Beside the published surveys',
  publishedSentence: (us: readonly [string, string] | null, coloss: readonly [string, string] | null) => {
    const said = [us === null ? '' : `${us[0]} to ${us[1]} in 100 in the United States`, coloss === null ? '' : `${coloss[0]} to ${coloss[1]} in Europe and partner countries`].filter((part) => part !== '').join(', ');
    return `The winters listed here ran from ${said}. They are other people’s colonies in other climates, counted by many hands: they tell what is common, not what yours should be.`;
  },
  survey: 'Survey',
  averages: 'average of operations',
  own: 'Yours, winter',
  publishedNote: 'Total loss: all lost of all at risk, as the surveys print it; it follows the large operations. The average gives every operation the same weight and follows the many small ones. Only figures that could be read in the source named are listed, so winters are missing.',
  countries: (low: string, high: string) => `from ${low} to ${high} by country`,
  notPrinted: 'Not read in any source.',

  sinceWinter: (day: string) => `${day}, the winter’s first day`,
  sinceStart: 'each colony’s own start',
  countedFrom: 'Counted from',
  winters: 'Winters',
  thisWinter: (season: string) => `the winter of ${season}`,
  allWinters: 'all winters together',
  by: 'By',
  groupings: {
    none: 'nothing: all together', yard: 'yard', source: 'source of the colony', queenAge: 'age of the queen', line: 'queen line', treated: 'treatment before winter', mites: 'mites in late summer', stores: 'stores in autumn',
  } satisfies Record<Grouping, string>,
  unitedLost: 'count united colonies as lost',
  curvesShown: 'Curves shown',
  together: 'All together',
  survivalName: (by: string | null) => (by === null ? 'Colonies alive' : `Colonies alive, by ${by}`),
  groupsTable: 'The groups in figures',
  group: 'Group',
  colonies: 'Colonies',
  colonyWinters: 'Colony winters',
  lost: 'Lost',
  aliveAtEnd: 'Alive at the end %',
  meanDays: (tau: number) => `Mean days of ${tau}`,
  lessReference: (name: string) => `Days less ${name}`,
  medianDay: 'Half lost by day',
  testName: (chi: string, df: number, p: string) => `Log-rank: chi-square ${chi} on ${df} ${df === 1 ? 'degree' : 'degrees'} of freedom, p ${p}.`,
  pairsAsk: 'Compare the groups pair by pair',
  pairsName: 'Pair by pair',
  pair: 'Pair',
  pairChi: 'Chi-square',
  pairP: 'p, adjusted after Holm',
  groupTitle: (label: string, part: 'all' | 'lost') => `${label}: ${part === 'lost' ? 'lost' : 'watched'}`,
  lostOf: (lost: number, colonies: number) => `${lost} of ${colonies} lost.`,
  meanNoRange: 'Nothing was lost, so the curve alone gives no range, and it is not set against another group.',
  meanNote: (tau: number) => `Of the first ${tau} days, a colony of this group lived so many on average; in brackets the 95 % range.`,
  differenceNote: 'The difference has its own range; one on both sides of nought may be chance.',
  medianNot: 'More than half lived on to the end, so there is no day by which half were lost.',
  incidence: 'What became of them',
  incidenceName: 'Lost, sold and united over the winter',
  curvesHeading: 'The curves and their test',
  survivalHow: 'Steps down where colonies were lost; the shade is the 95 % band; a tick is a day on which a colony left alive. Colonies that came later enter on their day.',
  survivalGroups: 'A group is what the record of the winter’s first day says; nothing that was seen later makes a group, but for the stores, which are weighed when feeding is over.',
  survivalTest: 'The log-rank test compares whole curves. Colonies of a yard share their fate, so its p is rather too small; and of twenty groupings looked at, one stands out by chance alone.',
  survivalMethod: 'Kaplan-Meier with late entry, log-log band; mean days restricted to the days that all groups were watched; all winters are compared within each winter.',
  incidenceNote: 'Cumulative incidence (Aalen-Johansen): a colony that was sold or united cannot be lost any more, so each fate has its own share and they add up.',
  rulesNote: 'The limits and windows are house rules and can be changed under Book.',
  ruleWindows: 'House rules of this section',
} as const;
