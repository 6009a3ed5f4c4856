import type { RuleTally, TallyVerdict } from '#shared/contract/tally.ts';
import { counted, number } from '../../parts/format.ts';

/** What the page of the rules' tally says. */
export const words = {
  title: 'How the rules have done',
  line: 'What the rules of the list asked for in past seasons, what was done in time, and what came of it.',
  list: 'The rules',
  working: (weeks: number, of: number) => `Going through the past seasons: ${weeks} of ${of} weeks.`,
  workingHow: 'The rest of the program can be used meanwhile.',
  nothing: 'Once a season is over, this page says how the rules of the list have done in it.',
  nothingNext: 'To the list',
  sentence: (seasons: number, compared: number, bore: number, against: number) => {
    const past = seasons === 1 ? 'In the season that is over' : `In ${seasons} seasons`;
    if (compared === 0) return `${past} no rule asked often enough for what came of it to be compared.`;
    const rest = compared - bore - against;
    const parts = [
      ...(bore === 0 ? [] : [`for ${bore} what was warned of came more often where it was not done in time`]), ...(against === 0 ? [] : [`for ${against} less often`]), ...(rest === 0 ? [] : [`for ${rest} the difference may be chance`]),
    ];
    return `${past} ${counted(compared, 'rule', 'rules')} can be compared: ${parts.join('; ')}.`;
  },
  span: (from: string, until: string) => `From ${from} to ${until}, one evening of every week, by what was in the book then and by the house rules as they are now.`,
  csv: 'Save as CSV',
  csvName: (until: string) => `rules-until-${until}.csv`,
  csvHead: ['rule', 'verdict', 'counted by', 'asked', 'in time', 'of', 'in time low', 'in time high', 'late', 'asked no more', 'harm', 'done: harmed', 'done: of', 'done: low', 'done: high', 'not done: harmed', 'not done: of', 'not done: low', 'not done: high', 'not asked: harmed', 'not asked: of', 'harmed in all', 'of them asked before', 'sentence'],
  groups: {
    'bore out': 'What they warned of came', against: 'It came less often where they were not heeded', open: 'No more apart than chance', 'nothing came': 'Nothing came of it', few: 'Too few to tell', 'no harm looked for': 'Only whether it was done',
    'never asked': 'Never asked',
  } satisfies Record<TallyVerdict, string>,
  asked: ({ per, asked, late, fell }: RuleTally) =>
    [
      per === 'time' ? `Asked ${counted(asked, 'time', 'times')}` : `Asked for ${counted(asked, 'colony', 'colonies')}, each once a season`, ...(late === 0 ? [] : [`${number(late)} done late`]), ...(fell === 0 ? [] : [`${number(fell)} asked no more, by a later record`]),
    ].join('; '),
  done: 'done in time',
  figures: 'Its figures',
  inTime: 'Done in time',
  harmDone: (harm: string) => `Done in time, and ${harm}`,
  harmLeft: (harm: string) => `Not done in time, and ${harm}`,
  harmOthers: (harm: string) => `Never asked for, and ${harm}`,
  foretold: (harm: string) => `Asked before, of all that came to it (${harm})`,
  answers: (kinds: string) => `An entry of one of these answers it: ${kinds}. In time is by its last day, or a week after it first stood in the list.`,
  late: 'Later, within a month, is late and counts as not done in time.',
  numbers: 'The numbers behind it',
  change: 'Change its numbers',
  changeOf: (title: string) => `Change its numbers: ${title}`,
  how: 'How this is counted',
  howText: 'Every past week the rules are asked what they would have asked on its evening. What was done before the evening was never asked for.',
  caution: 'Read with care',
} as const;
