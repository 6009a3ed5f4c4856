import { addDays, dayInWords, daysBetween, monthDayInWords, type Day } from '#shared/days.ts';
import type { ColonyState, Look } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { phaseOn } from '#core/work/roundPhases.ts';
import { lookSentence } from './colonyWords.ts';
import { yardOn } from './yardOn.ts';

/*
 * What the sheet that goes into the yard says of a colony: what was found last, and what to look for. Only what the
 * record says on the day; each sentence names the record, and the numbers are house rules (`round.…`).
 */

/** Days after which a mite count says nothing of the colony any more (a brood cycle and a half doubles it; common practice, no source). */
const countHolds = 60;
/** Days after which a walk-away split is an ordinary colony again. */
const splitHolds = 60;

/** The last look before the day, in words. */
export function foundLast(state: ColonyState, day: Day): { day: Day; sentence: string } | null {
  const look = state.looks.findLast((one) => one.day < day);
  if (look === undefined) return null;
  const parts = [look.framesBees === null && look.framesBrood === null && look.framesStores === null ? '' : lookSentence(look)];
  if (look.eggs !== null) parts.push(look.eggs ? 'eggs' : 'no eggs');
  if (look.queenSeen !== null) parts.push(look.queenSeen ? 'queen seen' : 'queen not seen');
  const said = parts.filter((part) => part !== '').join(', ');
  return { day: look.day, sentence: said === '' ? 'looked at' : said };
}

/** What to look for. `recent`: standing splits and treatments of the last months, those of whole yards too. */
export function cuesFor(state: ColonyState, day: Day, rules: RuleValues, recent: readonly Entry[]): string[] {
  const looks = state.looks.filter((look) => look.day < day);
  // A hive that was closed for winter is not opened for what the looks of summer left open.
  const last = looks.at(-1);
  if (phaseOn(rules, day) === 'winter' && (last === undefined || phaseOn(rules, last.day) !== 'winter')) return [];
  const walkAway = walkAwayCue(state, looks, day, rules, recent);
  return [walkAway, walkAway === null ? queenCue(state, looks, day, rules) : null, cellsCue(looks, day), mitesCue(state, day, rules, recent)].filter((cue) => cue !== null);
}

/** The half of a split that has to make its own queen: not opened before she can lay, and judged once she should. */
function walkAwayCue(state: ColonyState, looks: readonly Look[], day: Day, rules: RuleValues, recent: readonly Entry[]): string | null {
  const split = recent.findLast((entry) => entry.kind === 'split' && entry.day < day && entry.body.newQueen === 'walk-away' && entry.body[entry.body.queen === 'moves' ? 'colony' : 'child'] === state.id);
  if (split === undefined) return null;
  const age = daysBetween(split.day, day);
  const queenSince = state.reigns.some((reign) => reign.since > split.day && reign.since <= day);
  if (age > splitHolds || queenSince || looks.some((look) => look.day > split.day && look.eggs === true)) return null;
  const [from, by] = [numberRule(rules, 'attention.walkAway.from'), numberRule(rules, 'attention.walkAway.by')];
  const made = `Walk-away split of ${spoken(day, split.day)}, day ${age}`;
  if (age < from) return `${made}: look for eggs from ${spoken(day, addDays(split.day, from))}, not before.`;
  return age <= by ? `${made}: look for eggs.` : `${made}, no eggs recorded: a queen should lay by now.`;
}

function queenCue(state: ColonyState, looks: readonly Look[], day: Day, rules: RuleValues): string | null {
  const last = looks.at(-1);
  const reign = state.reigns.findLast((one) => one.since <= day);
  if (reign !== undefined && reign.until !== null && reign.until <= day) return `No queen since ${spoken(day, reign.until)} (${reign.ending ?? 'gone'}): look for eggs.`;
  if (last === undefined || (reign !== undefined && reign.since > last.day)) return null;
  const seen = [looks.findLast((look) => look.eggs === true || look.queenSeen === true)?.day, reign?.since].filter((one) => one !== undefined).toSorted().at(-1) ?? null;
  if (last.eggs === false && last.queenSeen !== true) return `No eggs on ${spoken(day, last.day)}: look for eggs or the queen.`;
  if (seen === null) return 'Neither queen nor eggs recorded yet: look for them.';
  const days = daysBetween(seen, day);
  // Only where the hive was looked into since and neither was found: a closed hive in winter is no cue.
  return last.day > seen && days > numberRule(rules, 'round.queenUnseen') ? `Neither queen nor eggs recorded since ${spoken(day, seen)}, ${days} days: look for them.` : null;
}

function cellsCue(looks: readonly Look[], day: Day): string | null {
  const last = looks.at(-1);
  return last?.queenCells == null || last.queenCells === 'none' ? null : `${last.queenCells.charAt(0).toUpperCase()}${last.queenCells.slice(1)} cells on ${spoken(day, last.day)}: look for cells.`;
}

function mitesCue(state: ColonyState, day: Day, rules: RuleValues, recent: readonly Entry[]): string | null {
  const count = state.miteCounts.findLast((one) => one.day < day);
  if (count === undefined || daysBetween(count.day, day) > countHolds) return null;
  const per100 = (100 * count.mites) / count.bees;
  if (per100 < numberRule(rules, 'round.mitesHigh')) return null;
  const whole = recent.filter((entry) => entry.kind === 'treatment' && entry.body.colony === undefined && entry.body.yard !== undefined && yardOn(state, entry.day) === entry.body.yard);
  const treated = [...state.treatments.map((one) => one.day), ...whole.map((entry) => entry.day)].filter((one) => one >= count.day && one <= day).toSorted().at(-1);
  const found = `${count.mites} mites in ${count.bees} bees on ${spoken(day, count.day)}, ${per100.toFixed(1)} in 100`;
  return treated === undefined ? `${found}, no treatment recorded since: count again.` : `${found}, treated ${spoken(day, treated)}: count again.`;
}

/** Without the year where it is plain. */
function spoken(day: Day, of: Day): string {
  return Math.abs(daysBetween(of, day)) < 300 ? monthDayInWords(of) : dayInWords(of);
}
