import type { HouseRule } from '#shared/contract/order.ts';
import { attentionRuleDefinitions } from './attentionRules.ts';
import { stockRuleDefinitions } from './stockRules.ts';
import { lossRuleDefinitions } from './lossRules.ts';
import { decisionRules } from './decisionRules.ts';
import { factorRuleDefinitions } from './factorRules.ts';
import { honeyRuleDefinitions } from './honeyRules.ts';
import { miteRuleDefinitions } from './miteRules.ts';
import { needRuleDefinitions } from './needRules.ts';
import { queenRuleDefinitions } from './queenRules.ts';
import { returnRuleDefinitions } from './returnRules.ts';
import { spaceRuleDefinitions } from './spaceRules.ts';
import { storesRuleDefinitions } from './storesRules.ts';
import { workRuleDefinitions } from './workRules.ts';
import { treatmentRuleDefinitions } from './treatmentRules.ts';

type Definition = Omit<HouseRule, 'value'>;

const practice = 'common practice, no source';

function part(key: string, label: string, standard: number, source: string, confidence: HouseRule['confidence'], most = 10): Definition {
  return { key, label, room: 'order', unit: 'per colony', type: 'number', default: standard, range: [0, most], source, confidence };
}

const partsList = 'Parts list of a beekeepers’ club: a2b2club.org, the A Bee Cs of woodenware';
const northernLayout = 'Northern double-deep layout of a page on hive parts (2 deeps, 20 frames, northeast)';

/** Every number the person may change, with its published default and the word for how well it is sourced. */
export const houseRuleDefinitions: readonly Definition[] = [
  { key: 'season.start', label: 'The season begins on', room: 'losses', unit: 'month-day', type: 'month-day', default: '04-01', range: null, source: 'US national survey: year 1 April to 1 April (apiaryinspectors.org)', confidence: 'read' },
  { key: 'season.winter', label: 'The winter begins on', room: 'losses', unit: 'month-day', type: 'month-day', default: '10-01', range: null, source: 'US national survey: winter 1 October to 1 April', confidence: 'read' },
  ...lossRuleDefinitions,
  ...factorRuleDefinitions,
  { key: 'order.confidence', label: 'How sure to be of the target', room: 'order', unit: 'share', type: 'number', default: 0.8, range: [0.5, 0.99], source: 'House choice', confidence: practice },
  { key: 'order.firstLossRate', label: 'Winter loss expected before any winter is recorded', room: 'order', unit: 'share', type: 'number', default: 0.288, range: [0.05, 0.8], source: '13-year average winter loss of the US national survey to 2018/19: 28.8 %', confidence: 'read' },
  { key: 'order.priorWeight', label: 'Weight of that expectation, in colonies', room: 'order', unit: 'colonies', type: 'number', default: 8, range: [1, 100], source: 'House choice for one winter or none', confidence: practice },
  { key: 'order.package.by', label: 'Packages are ordered by', room: 'order', unit: 'month-day', type: 'month-day', default: '01-31', range: null, source: 'Sellers close early in the year; ask yours', confidence: practice },
  { key: 'order.package.delivery', label: 'Packages arrive', room: 'order', unit: 'words', type: 'text', default: 'late April', range: null, source: 'Northern practice; ask the seller', confidence: practice },
  { key: 'order.nuc.by', label: 'Nucs are ordered by', room: 'order', unit: 'month-day', type: 'month-day', default: '02-15', range: null, source: 'Sellers close early in the year; ask yours', confidence: practice },
  { key: 'order.nuc.delivery', label: 'Nucs arrive', room: 'order', unit: 'words', type: 'text', default: 'mid May', range: null, source: 'Northern practice; ask the seller', confidence: practice },
  { key: 'order.nextSpringFrom', label: 'From this day an order is for the next year', room: 'order', unit: 'month-day', type: 'month-day', default: '03-01', range: null, source: 'After the sellers’ last days', confidence: practice },
  { key: 'order.spare', label: 'Spare equipment', room: 'order', unit: 'share', type: 'number', default: 0.1, range: [0, 0.5], source: '10 to 20 % of boxes, covers and bottoms in larger operations', confidence: 'from memory' },
  { key: 'order.deadOutSound', label: 'Share of a dead-out’s equipment that can be used again', room: 'order', unit: 'share', type: 'number', default: 0.9, range: [0, 1], source: 'House choice; equipment after disease is another matter: ask the inspector', confidence: practice },
  part('order.deeps', 'Deep boxes', 2, northernLayout, 'read-weak', 5),
  part('order.mediums', 'Medium supers', 3, 'Two or three with foundation, three or four with drawn comb in a good flow', 'from memory', 8),
  { key: 'order.superNet10', label: 'Honey in a full medium super of ten frames', room: 'order', unit: 'lb', type: 'number', default: 38, range: [20, 60], source: 'Ten frames at 3.5 to 4 lb; club pages say 35 to 40', confidence: 'arithmetic' },
  { key: 'order.superNet8', label: 'Honey in a full medium super of eight frames', room: 'order', unit: 'lb', type: 'number', default: 30, range: [15, 50], source: 'Eight frames at 3.5 to 4 lb', confidence: 'arithmetic' },
  { key: 'order.superRipening', label: 'Room for nectar that ripens, against the crop', room: 'order', unit: 'times', type: 'number', default: 1.5, range: [1, 3], source: 'Thin nectar takes more comb than the honey it becomes', confidence: 'from memory' },
  part('order.bottomBoards', 'Bottom boards', 1, partsList, 'read'),
  part('order.entranceReducers', 'Entrance reducers', 1, partsList, 'read'),
  part('order.innerCovers', 'Inner covers', 1, partsList, 'read'),
  part('order.outerCovers', 'Outer covers', 1, partsList, 'read'),
  part('order.stands', 'Stands', 1, partsList, 'read'),
  part('order.feeders', 'Feeders', 1, partsList, 'read'),
  part('order.excluders', 'Queen excluders', 1, `${partsList} (optional there)`, 'read'),
  { key: 'round.mitesHigh', label: 'Mites in 100 bees from which the field sheet speaks of them', room: 'round', unit: 'in 100 bees', type: 'number', default: 3, range: [0.5, 20], source: 'USDA-ARS Tucson, quoted by the Gilroy beekeepers (gilroybeekeepers.org): 3; others say 1 to 5', confidence: 'read' },
  { key: 'round.queenUnseen', label: 'Days without queen or eggs after which the field sheet asks for them', room: 'round', unit: 'days', type: 'number', default: 42, range: [7, 365], source: 'Two worker brood cycles of 21 days', confidence: practice },
  ...attentionRuleDefinitions,
  ...needRuleDefinitions,
  ...decisionRules,
  ...stockRuleDefinitions,
  ...honeyRuleDefinitions,
  ...storesRuleDefinitions,
  ...spaceRuleDefinitions,
  ...miteRuleDefinitions,
  ...treatmentRuleDefinitions,
  ...returnRuleDefinitions,
  ...queenRuleDefinitions,
  ...workRuleDefinitions,
];

export type RuleValues = ReadonlyMap<string, number | string>;

/** The rules with the person's own values where they were changed. */
export function houseRules(kept: RuleValues): HouseRule[] {
  return houseRuleDefinitions.map((rule) => ({ ...rule, value: kept.get(rule.key) ?? rule.default }));
}

export function numberRule(kept: RuleValues, key: string): number {
  const value = kept.get(key) ?? definitionOf(key).default;
  if (typeof value !== 'number') throw new Error(`house rule ${key} is not a number`);
  return value;
}

export function textRule(kept: RuleValues, key: string): string {
  const value = kept.get(key) ?? definitionOf(key).default;
  if (typeof value !== 'string') throw new Error(`house rule ${key} is not a text`);
  return value;
}

/** What is wrong with a new value, or null. */
export function ruleTrouble(key: string, value: number | string): string | null {
  const rule = houseRuleDefinitions.find((one) => one.key === key);
  if (rule === undefined) return `There is no house rule called “${key}”.`;
  switch (rule.type) {
    case 'number': {
      if (typeof value !== 'number' || !Number.isFinite(value)) return `“${rule.label}” is a number.`;
      const [low, high] = rule.range ?? [-Infinity, Infinity];
      if (isWhole(rule) && !Number.isInteger(value)) return `“${rule.label}” is a whole number of ${rule.unit}.`;
      return value < low || value > high ? `“${rule.label}” lies between ${low} and ${high}.` : null;
    }
    case 'month-day':
      // 29 February is not a day of every year, and a rule holds in every year.
      return typeof value === 'string' && /^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/.test(value) && isDayOfEveryYear(value) ? null : `“${rule.label}” is a day of the year, as 01-31.`;
    case 'text':
      if (rule.choices !== undefined) return typeof value === 'string' && rule.choices.includes(value) ? null : `“${rule.label}” is one of: ${rule.choices.join(', ')}.`;
      return typeof value === 'string' && value.trim() !== '' && value.length <= 80 ? null : `“${rule.label}” is a few words.`;
  }
}

/** What days are counted by is whole: no calendar has half a day. */
export function isWhole({ key, unit }: Pick<Definition, 'key' | 'unit'>): boolean {
  return unit === 'days' || unit === 'weeks' || unit === 'months' || unit === 'summers' || key === 'mites.colonies';
}

function isDayOfEveryYear(monthDay: string): boolean {
  const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return Number(monthDay.slice(3)) <= (days[Number(monthDay.slice(0, 2)) - 1] ?? 0);
}

const definitions = new Map(houseRuleDefinitions.map((rule) => [rule.key, rule]));

function definitionOf(key: string): Definition {
  const rule = definitions.get(key);
  if (rule === undefined) throw new Error(`no house rule is called ${key}`);
  return rule;
}
