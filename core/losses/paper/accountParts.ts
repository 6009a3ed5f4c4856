import { seasonName } from '#shared/seasons.ts';
import { count, part, table, text } from './paperTables.ts';
import type { SectionMaker } from './sectionFacts.ts';

const came = ['packages', 'nucs', 'swarms', 'splits', 'boughtColonies', 'movedIn'] as const;
const went = ['movedOut', 'sold', 'given', 'combined', 'absconded', 'lostSummer', 'lostWinter'] as const;
const columns = [
  ['opening', 'Start'], ['packages', 'Packages'], ['nucs', 'Nucs'], ['swarms', 'Swarms'], ['splits', 'Splits'], ['boughtColonies', 'Full colonies'], ['movedIn', 'Moved in'], ['movedOut', 'Moved out'],
  ['sold', 'Sold'], ['given', 'Given'], ['combined', 'United'], ['absconded', 'Absconded'], ['lostSummer', 'Lost, summer'], ['lostWinter', 'Lost, winter'], ['closing', 'End'],
] as const;

const always: readonly string[] = ['opening', 'lostSummer', 'lostWinter', 'closing'];

/** Section 1: the account of the season, yard by yard, that balances. */
export const accountParts: SectionMaker = ({ answers, season }) => {
  const { ledger, running, balances, yards } = answers.ledger(season);
  const all = ledger.find(({ yard }) => yard === 'all');
  const named = yards.filter(({ code, name }) => code !== name).map(({ code, name }) => `${code} ${name}`).join(', ');
  const sum = (of: typeof came | typeof went) => of.reduce((total, column) => total + (all?.[column] ?? 0), 0);
  // On paper only columns with something in them; the file has all.
  const empty = columns.filter(([column]) => !always.includes(column) && ledger.every((row) => row[column] === 0));
  const title = `The account, ${seasonName(season)}${running ? ', so far' : ''}`;
  return [part('account', '', {
    sentences: balances
      ? [`It balances: ${all?.opening ?? 0} at the start, ${sum(came)} came, ${sum(went)} went, ${all?.closing ?? 0} ${running ? 'now' : 'at the end'}.`]
      : ['The account does not balance. No record is lost; check the book and keep a copy of it.'],
    tables: [table('account', title, {
      columns: [text('Yard'), ...columns.map(([column, label]) => ({ ...count(running && column === 'closing' ? 'Now' : label), ...(empty.some(([one]) => one === column) ? { only: 'file' as const } : {}) }))], totals: true,
      rows: ledger.map((row) => [row.yard === 'all' ? 'All yards' : row.yard, ...columns.map(([column]) => row[column])]),
    })],
    notes: [`${empty.length === 0 ? '' : `Nothing this season under: ${empty.map(([, label]) => label.toLowerCase()).join(', ')}. `}${named === '' ? '' : `${named}. `}Start and what came, less what went, is the end, yard by yard. Each colony is counted where it stood.`],
  })];
};
