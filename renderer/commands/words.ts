import type { FoundColony, FoundLot } from '#shared/contract/find.ts';
import { dayText } from '../parts/format.ts';

/** What the Find box says. */
export const words = {
  find: 'Find',
  findName: 'Find a colony, yard, queen, lot of honey, note or command',
  placeholder: 'Colony, yard, queen, lot of honey, note or command',
  placeholderNoBook: 'Command',
  results: 'What was found',
  groups: { colonies: 'Colonies', yards: 'Yards', queens: 'Queens', lots: 'Lots of honey', commands: 'Commands', entries: 'Entries and notes' },
  total: (shown: number, total: string) => `${shown} of ${total}`,
  status: (count: number) => (count === 0 ? '' : count === 1 ? '1 line' : `${count} lines`),
  nothing: (typed: string) => `Nothing in this book and no command has “${typed}” in it.`,
  nothingMend: 'Every word typed must be there; try fewer letters.',
  keys: 'Arrows choose, Enter opens, Esc closes.',
  help: 'All commands and keys',
  colony: ({ yardName, start, end, how }: FoundColony) =>
    end === null ? yardName : `${yardName}, ${dayText(start)} to ${dayText(end)}, ${endings[how]}`,
  living: (count: string) => `${count} alive`,
  queen: (year: number | null, colour: string | null) => (year === null ? 'Queen, year not known' : `Queen of ${year}, ${colour}`),
  queenIn: 'in',
  queenSince: (since: string, until: string | null) => (until === null ? `since ${since}` : `${since} to ${until}`),
  lot: ({ from, until, yards, left }: FoundLot) =>
    [until === null ? `no harvest of its own, since ${dayText(from)}` : `harvested ${dayText(from)}${until === from ? '' : ` to ${dayText(until)}`}`, ...yards, ...(left ? [] : ['nothing left'])].join(', '),
  struck: 'struck',
} as const;

const endings: Readonly<Record<FoundColony['how'], string>> = {
  alive: 'alive', lost: 'lost', sold: 'sold', given: 'given away', combined: 'combined', absconded: 'absconded',
};
