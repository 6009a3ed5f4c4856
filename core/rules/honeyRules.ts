import type { HouseRule } from '#shared/contract/order.ts';

function limit(key: string, label: string, standard: number, source: string, confidence: HouseRule['confidence']): Omit<HouseRule, 'value'> {
  return { key: `honey.${key}`, label, room: 'honey', unit: '% water', type: 'number', default: standard, range: [13, 30], source, confidence };
}

const directive = 'Directive 2001/110/EC, Annex II (legislation.gov.uk/eudr/2001/110/annex/II)';
const grades = 'USDA AMS, US Standards for Grades of Extracted Honey, 1985 (medicalalgorithms.com/usda-grades-of-extracted-honey)';
const codex = 'Codex Alimentarius CXS 12-1981, section 3.4';

/** The most water that honey may hold, by place and use, what keeps, and what jars and comparisons go by. Laws change: the one in force goes before these. */
export const honeyRuleDefinitions: readonly Omit<HouseRule, 'value'>[] = [
  limit('water.usdaAB', 'United States, grades A and B: water at most', 18.6, grades, 'read'),
  limit('water.usdaC', 'United States, grade C: water at most', 20, grades, 'read'),
  limit('water.eu', 'European Union: water at most', 20, directive, 'read'),
  limit('water.euHeather', 'European Union, heather (Calluna): water at most', 23, directive, 'read'),
  limit('water.euBaker', 'European Union, baker’s honey: water at most', 23, directive, 'read'),
  limit('water.euBakerHeather', 'European Union, baker’s honey from heather: water at most', 25, directive, 'read'),
  limit('water.codex', 'Codex standard: water at most', 20, codex, 'from memory'),
  limit('water.codexHeather', 'Codex standard, heather (Calluna): water at most', 23, codex, 'from memory'),
  limit('water.anz', 'Australia and New Zealand: water at most', 21, 'Food Standards Code, honey standard (a copy: sqrdapp.com/law/show-178990.html)', 'read-weak'),
  limit('water.keeps', 'Honey keeps a year whatever its yeasts: water below', 17.1, 'USDA Agriculture Handbook 335, as quoted in a thread (beesource.com): below 17.1 % safe for a year', 'read-weak'),
  { key: 'honey.bestBefore', label: 'Jars are best before, after they were filled', room: 'honey', unit: 'months', type: 'number', default: 24, range: [1, 120], source: 'House choice: two years from filling is often printed; whoever fills the jars answers for the day', confidence: 'common practice, no source' },
  { key: 'honey.fewest', label: 'Yields are compared from so many weighed colony-seasons on', room: 'honey', unit: 'colony-seasons', type: 'number', default: 12, range: [4, 500], source: 'House choice', confidence: 'common practice, no source' },
  limit('water.standard', 'Crops are compared at this water', 17, 'House choice: crops weighed wetter or drier count as at one water', 'common practice, no source'),
];
