import type { AnswerSheets } from '#shared/contract/answers.ts';
import type { Day } from '#shared/days.ts';
import { periodDays, seasonName, seasonOf, type Season } from '#shared/seasons.ts';
import { seasonsOf } from '../reviewFacts.ts';
import { stretchOf, type AnswerFacts } from './answerFacts.ts';
import { quarterDays, quarterName, quarterOf, quarterSheet, type Quarter } from './quarterSheet.ts';
import { turnoverSheet } from './turnoverSheet.ts';
import { winteringSheet } from './winteringSheet.ts';

/** All answer sheets of a season and a quarter; without them the last ones that are over, or the running ones. */
export function answerSheets(facts: AnswerFacts, season: Season | undefined, quarter: Quarter | undefined): AnswerSheets {
  const seasons = seasonsOf(facts).toReversed().map((one) => ({ season: one, name: seasonName(one), complete: periodOver(facts, one) }));
  const quarters = quartersOf(facts);
  const own = season ?? seasons.find(({ complete }) => complete)?.season ?? seasons[0]?.season ?? seasonOf(facts.asOf, facts.borders);
  const wanted = quarter ?? quarters.find(({ complete }) => complete) ?? quarters[0] ?? quarterOf(facts.asOf);
  const chosen: Quarter = { year: wanted.year, quarter: wanted.quarter };
  return { asOf: facts.asOf, seasons, season: own, quarters, quarter: chosen, sheets: [turnoverSheet(facts, own), winteringSheet(facts, own), quarterSheet(facts, chosen)] };
}

function periodOver(facts: AnswerFacts, season: Season): boolean {
  const { from, until } = periodDays(season, 'year', facts.borders);
  return stretchOf(facts, from, until).complete;
}

/** Every quarter from the first colony to the as-of day, newest first. */
function quartersOf(facts: AnswerFacts): AnswerSheets['quarters'] {
  const first = facts.states.reduce<Day | null>((day, { start }) => (day === null || start < day ? start : day), null);
  if (first === null || first > facts.asOf) return [];
  const found: AnswerSheets['quarters'] = [];
  for (let one = quarterOf(first); quarterDays(one).from <= facts.asOf; one = quarterOf(quarterDays(one).until)) {
    const { from, until } = quarterDays(one);
    found.push({ ...one, name: quarterName(one), complete: stretchOf(facts, from, until).complete });
  }
  return found.toReversed();
}
