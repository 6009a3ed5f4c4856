import type { Ending, United } from '#shared/contract/values.ts';
import type { Period } from '#shared/seasons.ts';

/** Everything the Losses screen says by itself; the sentences made from the data come from the desk. */
export const words = {
  title: (season: string) => `Season review, ${season}`,
  titleEmpty: 'Season review',
  line: 'What was lost, when and where, and how sure the numbers are.',
  print: 'Print the review',
  empty: 'Once colonies are in the book, this page counts what each yard lost, summer and winter, with the range that so many colonies allow.',
  emptyAction: 'Bring records in on the Book page',

  season: 'Season',
  soFar: 'so far',
  period: 'Loss over',
  periods: { winter: 'the winter', summer: 'the summer', year: 'the whole year' } satisfies Record<Period, string>,
  united: 'United colonies',
  unitedChoice: { lost: 'count as lost', takenOut: 'are taken out' } satisfies Record<United, string>,

  all: 'All yards',
  rateHeading: {
    winter: 'Winter loss by yard',
    summer: 'Summer loss by yard',
    year: 'Loss over the year by yard',
  } satisfies Record<Period, string>,
  yard: 'Yard',
  atRisk: 'At risk',
  lost: 'Lost',
  rate: 'Rate %',
  range: 'plausible range',
  rangeTable: '95 % range',
  few: 'few',
  noRates: 'No colony was at risk in this period.',
  asTable: 'As a table',
  asPicture: 'As a picture',

  noteHeading: (group: string, lost: number, atRisk: number) => `${group}, ${lost} of ${atRisk}`,
  noneAtRisk: 'No colony was at risk here in this period, so there is no rate.',
  fewSentence: (atRisk: number, low: number, high: number) =>
    `With ${atRisk === 1 ? 'one colony' : `${atRisk} colonies`} the rate alone says little: an underlying rate anywhere from ${low} to ${high} in 100 would give such a count now and then.`,
  rateSentence: (rate: number, low: number, high: number) => `${rate} in 100 were lost. The underlying rate may plausibly be anywhere from ${low} to ${high} in 100.`,
  above: 'Its whole range lies above that of all yards together; the diamond marks that.',
  running: 'The period is still running: colonies can still be lost in it.',
  intervals: 'Ranges, 95 %',
  wilson: (range: string) => `Wilson: ${range}`,
  clopperPearson: (range: string) => `Clopper-Pearson, never too narrow: ${range}`,
  quasi: (range: string, df: number, units: number, dispersion: string) =>
    `Allowing for yards that share their fate: ${range}. Quasi-binomial, t with ${df} degrees of freedom, ${units} yards, spread ${dispersion} times that of chance.`,
  fewYards: 'With so few yards that says next to nothing; the picture shows Wilson’s range.',
  allWilson: (why: string) => `All yards with Wilson’s range. ${why}`,
  average: 'Mean of the yards',
  averageSentence: (mean: string, range: string, median: string, units: number) =>
    `${mean}${range === '' ? '' : ` ${range}`}, middle one ${median}, ${units === 1 ? 'one yard' : `${units} yards`}. Every yard weighs the same here, so small ones count for more.`,
  endedHere: 'Ended here this season',
  endedNone: 'No colony ended here this season.',

  counted: 'How it is counted',
  countedText: {
    winter: 'At risk: alive on the first day of winter, and made or bought since, less what was sold or given away. Lost: dead, queenless beyond help, absconded or destroyed before the season’s end.',
    summer: 'At risk: alive when the season began, and made, caught or bought up to winter, less what was sold or given away. Lost: dead, queenless beyond help, absconded or destroyed before winter.',
    year: 'At risk: alive when the season began and all made, caught or bought in it, less what was sold or given away. The year is counted by itself; summer and winter rates are never added up.',
  } satisfies Record<Period, string>,
  unitedText: {
    lost: 'A colony united into another counts as lost: the rule of the national loss surveys.',
    takenOut: 'A colony united into another is taken out of the base, neither lost nor at risk. A strong colony united for room is not a death; a failing one is.',
  } satisfies Record<United, string>,
  source: 'Total loss as in the standard epidemiological methods for honey bee losses (vanEngelsdorp and others, J Apic Res 2013).',
  rangesHeading: 'What the ranges mean',
  rangesText:
    'Every colony was counted, so the loss itself is known. The range tells how far the rate behind a period like this one may differ: Wilson’s 95 % interval for a yard; for all yards together one that allows for yards sharing their fate, as soon as there are three.',
  base: 'Resting on',
  baseText: (atRisk: number, yards: number) =>
    `${atRisk === 1 ? 'One colony' : `${atRisk} colonies`} at risk in ${yards === 1 ? 'one yard' : `${yards} yards`}.`,
  fewText: 'Below 10 colonies at risk look at the counts and the range, not at the rate.',

  survival: 'When they died',
  countedFrom: 'Counted from',
  sinceStart: 'the colony’s own start',
  yardsShown: 'Yards shown',
  survivalHow: 'Steps down where colonies were lost; the shade is the 95 % band (log-log); a tick is a day on which a colony left alive: sold, given, united or still living at the end of the count.',
  survivalHowStart: 'Colonies that were already old when their records begin enter at their age of that day.',
  survivalMethod: 'Kaplan-Meier, with colonies that came later entering on their day.',
  survivalNone: 'No colony was at risk, so there is no curve.',
  noColoniesIn: (yards: string) => `No colonies at risk: ${yards}.`,
  survivalName: (from: string) => `Colonies alive, counted from ${from}`,

  ledger: 'The season’s account',
  ledgerNote: 'Each colony is counted where it stood. Moves go out of one yard and into another; everything else comes or goes once.',
  balances: (opening: number, came: number, went: number, closing: number) =>
    `It balances: ${opening} at the start, ${came} came, ${went} went, ${closing} now.`,
  balancesClosed: (opening: number, came: number, went: number, closing: number) =>
    `It balances: ${opening} at the start, ${came} came, ${went} went, ${closing} at the end.`,
  unbalanced: 'The account does not balance. No record is lost; check the book on the Book page and keep a copy of it.',
  leftOut: (columns: string) => `Nothing this season under: ${columns}.`,
  came: 'Came',
  went: 'Went',
  columns: {
    opening: 'Start',
    packages: 'Pack-ages',
    nucs: 'Nucs',
    swarms: 'Swarms',
    splits: 'Splits',
    boughtColonies: 'Full colonies',
    movedIn: 'Moved in',
    movedOut: 'Moved out',
    sold: 'Sold',
    given: 'Given',
    combined: 'United',
    absconded: 'Ab-sconded',
    lostSummer: 'Lost, summer',
    lostWinter: 'Lost, winter',
    closing: 'End',
    closingNow: 'Now',
    aliveOn1October: 'On 1 Oct',
  },

  past: {
    winter: 'Your winters',
    summer: 'Your summers',
    year: 'Your years',
  } satisfies Record<Period, string>,
  pastOne: 'One season is in the book; earlier ones will stand here to compare with.',

  ended: 'Colonies that ended this season',
  endedEmpty: 'No colony ended this season.',
  day: 'Day',
  colony: 'Colony',
  how: 'How',
  causes: 'Cause',
  endings: { alive: 'alive', lost: 'lost', sold: 'sold', given: 'given away', combined: 'united', absconded: 'absconded' } satisfies Record<Ending, string>,
  noCause: 'No cause was entered for this loss. It stays among the causes as unknown; enter it on the colony’s page when you know it.',
  causesAre: 'Causes are what you saw or believed; several may stand together.',
  openColony: 'Open the colony to see its records.',
} as const;
