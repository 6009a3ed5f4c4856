import { dayInWords } from '#shared/days.ts';
import { currentYard, type ColonyState, type Reign } from '#core/journal/colonyState.ts';
import type { Names } from '#core/journal/kindRules.ts';

const ended: Readonly<Record<ColonyState['how'], string>> = {
  alive: 'alive', lost: 'lost', sold: 'sold', given: 'given away', combined: 'united into another', absconded: 'absconded',
};

/** What differs between two states of a colony, in whole sentences; empty only if nothing does. Null: not in the book. */
export function changeWords(before: ColonyState | null, after: ColonyState | null, names: Names): string[] {
  if (after === null) return before === null ? [] : [`Colony ${before.label} goes out of the book; it was in it from ${dayInWords(before.start)}.`];
  if (before === null) return [`Colony ${after.label} comes into the book on ${dayInWords(after.start)}.`];
  const name = `Colony ${after.label}`;
  const sentences: string[] = [];
  const differs = <Key extends keyof ColonyState>(...keys: Key[]) => keys.some((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]));
  const say = (sentence: string) => void sentences.push(sentence);

  if (before.label !== after.label) say(`${before.label} is called ${after.label}.`);
  if (before.start !== after.start) say(`${name} begins on ${dayInWords(after.start)}, not on ${dayInWords(before.start)}.`);
  if (differs('end', 'how')) say(endWords(name, before, after));
  else if (differs('causes')) say(after.causes.length === 0 ? `${name} is lost without a cause written down.` : `${name} is lost of: ${after.causes.join('; ')}.`);
  if (differs('stays')) {
    const [was, is] = [names.yard(currentYard(before)).name, names.yard(currentYard(after)).name];
    if (was !== is) say(`${name} stands at ${is}, not at ${was}.`);
    else if (stayDays(before) !== stayDays(after)) say(`${name} stood in its yards on other days.`);
  }
  if (differs('reigns')) {
    const [was, is] = [queenWords(before), queenWords(after)];
    if (was !== is) say(`${name} has ${is}, not ${was}.`);
    else if (reignDays(before) !== reignDays(after)) say(`The account of the queens of ${after.label} changes.`);
  }
  if (differs('supers')) say(`${name} has ${superCount(after)} supers on it, not ${superCount(before)}.`);
  counted(name, 'inspection', before.looks, after.looks, say);
  counted(name, 'mite count', before.miteCounts, after.miteCounts, say);
  counted(name, 'harvest', before.harvests, after.harvests, say);
  counted(name, 'treatment', before.treatments, after.treatments, say);
  counted(name, 'feeding', before.feedings, after.feedings, say);
  counted(name, 'weight of stores', before.storesWeights, after.storesWeights, say, 'weights of stores');
  if (differs('daughters')) say(`${after.daughters.length === 0 ? 'No colony is' : after.daughters.length === 1 ? '1 colony is' : `${after.daughters.length} colonies are`} split from ${after.label}; it was ${before.daughters.length}.`);
  if (differs('mother')) say(`${name} is split from ${after.mother === null ? 'no colony' : names.colony(after.mother)}.`);
  if (differs('unitedFrom')) say(`${after.unitedFrom.length === 0 ? 'No colony is' : after.unitedFrom.map((id) => names.colony(id)).join(', ')} united into ${after.label}.`);
  if (differs('origin', 'supplier', 'price')) say(`How ${after.label} came changes.`);
  if (sentences.length === 0 && differs('lastDay')) say(`The last record of ${after.label} is of ${dayInWords(after.lastDay)}.`);
  return sentences;
}

function endWords(name: string, before: ColonyState, after: ColonyState): string {
  if (after.end === null) return before.end === null ? `${name} is alive.` : `${name} is alive after ${dayInWords(before.end)}.`;
  if (before.end === null) return `${name} is ${ended[after.how]} on ${dayInWords(after.end)}.`;
  return `${name} is ${ended[after.how]} on ${dayInWords(after.end)}, not ${before.how === after.how ? '' : `${ended[before.how]} `}on ${dayInWords(before.end)}.`;
}

/** Without the day that the colony's own end put on its last stay: the end is said by itself. */
function stayDays(state: ColonyState): string {
  return JSON.stringify(state.stays.map(({ yard, from, until }) => [yard, from, until === state.end ? null : until]));
}

function reignDays(state: ColonyState): string {
  return JSON.stringify(state.reigns.map((reign) => [reign.year, reign.source, reign.marked, reign.since, ...(endedWithColony(reign) ? [null, null] : [reign.until, reign.ending])]));
}

function endedWithColony(reign: Reign): boolean {
  return reign.ending === 'colony ended';
}

function queenWords(state: ColonyState): string {
  const last = state.reigns.at(-1);
  if (last === undefined || (last.until !== null && !endedWithColony(last))) return 'no queen that the book knows of';
  return `a ${last.marked ? 'marked ' : ''}queen ${last.year === null ? 'of unknown year' : `of ${last.year}`} since ${dayInWords(last.since)}`;
}

function superCount({ supers }: ColonyState): number {
  return supers.deep + supers.medium + supers.shallow;
}

function counted(name: string, what: string, before: readonly unknown[], after: readonly unknown[], say: (sentence: string) => void, plural = `${what}s`): void {
  if (JSON.stringify(before) === JSON.stringify(after)) return;
  const many = after.length === 1 ? what : plural;
  say(before.length === after.length ? `${name} has other figures in its ${plural}.` : `${name} counts ${after.length} ${many}, not ${before.length}.`);
}
