import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Need, NeedLine, PutOff } from '#shared/contract/needs.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { addDays, dayInWords, type Day } from '#shared/days.ts';
import { periodDays, seasonOf } from '#shared/seasons.ts';
import { lineKey, needLines } from '#core/attention/needs/needLines.ts';
import type { NeedFacts } from '#core/attention/needs/needRule.ts';
import type { Handlers } from './desk.ts';
import { putOffPapers, type PutOffBody } from './needPapers.ts';
import { needsNow, type NeedsNow } from './needsNow.ts';

/** Three months. */
const leastMost = 90;

export const needHandlers: Handlers<'needs.list' | 'needs.count' | 'needs.putOff' | 'needs.askAgain'> = {
  'needs.list': async ({ yard }, context) => {
    const { facts, open, off, today } = await needsNow(context);
    if (yard !== null && !facts.yards.some((one) => one.yard.id === yard)) throw new FaultError(refuse('unknown', 'That yard is not in this book.'));
    const here = (need: Pick<Need, 'yard'>) => yard === null || need.yard?.id === yard;
    const lines = linesOf(facts, open);
    return {
      today, lines: yard === null ? lines : linesOf(facts, open.filter(here)),
      putOff: putOffLines(off, yard, facts), putOffMost: longestPutOff(facts),
      yards: facts.yards.filter(({ standing }) => standing.length > 0).map(({ yard: { id, code, name } }) => ({ id, code, name, lines: lines.filter((line) => line.yards.some((one) => one.id === id)).length })),
    };
  },
  'needs.count': async (_, context) => {
    const { facts, open } = await needsNow(context);
    return { due: linesOf(facts, open).filter(({ status, optional }) => status !== 'coming' && !optional).length };
  },
  'needs.putOff': async ({ line, yard, colony, until, reason }, context) => {
    const { book, open, today, facts } = await needsNow(context);
    const chosen = open.filter((need) => lineKey(need) === line && (yard === null || need.yard?.id === yard) && (colony === null || need.colony?.id === colony));
    if (chosen.length === 0) throw new FaultError(refuse('moved-on', 'Nothing in the record asks for that any more.', { mend: 'It was done or put off meanwhile; nothing was changed.' }));
    if (until !== null && until <= today) throw new FaultError(refuse('bad-input', `${dayInWords(until)} is not after today.`, { field: 'until', mend: 'Choose a day to come; nothing was put off.' }));
    const most = longestPutOff(facts);
    if (until !== null && until > most) {
      throw new FaultError(refuse('bad-input', `${dayInWords(until)} is too far off: a line is put off until ${dayInWords(most)} at most.`, { field: 'until', mend: 'Choose an earlier day, or dismiss it for good with a reason; nothing was put off.' }));
    }
    if (until === null && reason === '') throw new FaultError(refuse('bad-input', 'What is dismissed for good needs a reason.', { field: 'reason', mend: 'A few words are enough: done, sold, looked and it was well.' }));
    const bodies = new Map(chosen.map((need): [string, PutOffBody] => [need.key, { rule: need.rule, act: need.act, about: aboutOf(need), until, reason, on: today }]));
    await book.store.keepPapers(putOffPapers([...bodies.keys()], (key) => bodies.get(key) ?? null));
    return { keys: [...bodies.keys()] };
  },
  'needs.askAgain': async ({ keys }, context) => {
    await context.open().store.keepPapers(putOffPapers(keys, () => null));
    return {};
  },
};

/** Until the next season begins, when the record asks anew; where that is near, a while beyond it. */
function longestPutOff({ today, borders }: NeedFacts): Day {
  const next = periodDays(seasonOf(today, borders), 'year', borders).until;
  const least = addDays(today, leastMost);
  return next > least ? next : least;
}

function linesOf({ yards, rules, today }: NeedFacts, needs: readonly Need[]): NeedLine[] {
  return needLines(needs, new Map(yards.map(({ yard, standing }) => [yard.id, standing.length])), rules, today);
}

function aboutOf({ colony, yard }: Need): string {
  return colony !== null ? `${colony.label}${yard === null ? '' : `, ${yard.name}`}` : (yard?.name ?? 'the operation');
}

/** What was put off together for one reason stands together; the newest first. What nothing asks for any more and is long past is left out. */
function putOffLines(off: NeedsNow['off'], yard: YardId | null, { byId, yards }: NeedFacts): PutOff[] {
  const inYard = new Set(yards.filter((one) => yard === null || one.yard.id === yard).flatMap((one) => [`y${one.yard.id}`, ...one.standing.map(({ state }) => `c${state.id}`)]));
  // What is asked for is where it is asked for, a dead-out too; of the rest what stands there tells.
  const shown = [...off].filter(([key, { need }]) => yard === null || (need === null ? inYard.has(key.split('|')[1] ?? '') : need.yard?.id === yard));
  const groups = Map.groupBy(shown, ([, { rule, act, until, reason, on, need }]) => JSON.stringify([rule, act, until, reason, on, need !== null]));
  return [...groups.values()]
    .flatMap((group): PutOff[] => {
      const [first] = group;
      if (first === undefined) return [];
      const { rule, act, until, reason, on, need } = first[1];
      if (need === null && until === null && !group.some(([key]) => isLiving(key, byId))) return [];
      const abouts = group.map(([, { about }]) => about);
      return [{ keys: group.map(([key]) => key), rule, act, about: abouts.length <= 4 ? abouts.join('; ') : `${abouts.slice(0, 3).join('; ')} and ${abouts.length - 3} more`, until, reason, on, asks: need !== null }];
    })
    .toSorted((a, b) => Number(b.asks) - Number(a.asks) || (a.on < b.on ? 1 : a.on > b.on ? -1 : 0));
}

/** A colony that is gone asks for nothing, dismissed or not. */
function isLiving(key: string, byId: NeedFacts['byId']): boolean {
  const about = key.split('|')[1] ?? '';
  return about.startsWith('c') && byId.get(Number(about.slice(1)) as ColonyId)?.end === null;
}
