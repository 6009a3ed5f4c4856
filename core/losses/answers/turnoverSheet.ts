import type { AnswerCell, AnswerSheet } from '#shared/contract/answers.ts';
import { addDays, dayInWords } from '#shared/days.ts';
import { defaultBorders, periodDays, seasonName, type Season } from '#shared/seasons.ts';
import { increases, removed, usLoss } from '../lossDefinitions.ts';
import { unitCounts } from '../lossRows.ts';
import { countsIn, known, notKnown, plural, share, stretchOf, takenForGranted, unknownWhy, type AnswerFacts, type Stretch } from './answerFacts.ts';

const source = 'Total loss with its turnover of colonies: vanEngelsdorp and others 2013, J Apic Res 52(4), doi 10.3896/IBRA.1.52.4.15; periods 1 April, 1 October, 1 April as in Steinhauer and others 2014. The treatment of united colonies follows a published interview with the survey’s authors of 2020.';

/** The counts of a year by the turnover definition. Its days are the survey’s own, whatever the book’s season is. */
export function turnoverSheet(facts: AnswerFacts, season: Season): AnswerSheet {
  const stretches = (['summer', 'winter', 'year'] as const).map((period) => {
    const { from, until } = periodDays(season, period, defaultBorders);
    return stretchOf(facts, from, until);
  });
  const columns = stretches.map((stretch) => columnOf(facts, stretch));
  const row = (key: Key, label: string, definition: string) => ({ key, label, definition, cells: columns.map((column) => column[key]) });
  const running = stretches.some(({ complete }) => !complete);
  const [, , year] = stretches;
  const remarks = new Set(stretches.flatMap((stretch) => (unknownWhy(facts, stretch) === null ? takenForGranted(facts, stretch) : [])));
  const absconded = year === undefined ? 0 : countsIn(facts, year).absconded;
  if (absconded > 0) remarks.add(`${plural(absconded, 'colony', 'colonies')} absconded; counted as lost.`);
  const swarms = year === undefined ? 0 : countsIn(facts, year).swarms;
  if (swarms > 0) remarks.add('The published rule names splits and purchases; swarms caught are counted like a purchase.');
  return {
    key: 'turnover',
    title: `Colonies through the year ${seasonName(season)}`,
    source,
    when: `${dayInWords(stretches[0]?.from ?? periodDays(season, 'year').from)} to ${dayInWords(periodDays(season, 'year', defaultBorders).until)}${running ? `, so far to ${dayInWords(facts.asOf)}` : ''}`,
    running,
    columns: stretches.map(({ complete, begun }, at) => `${['Summer', 'Winter', 'Year'][at] ?? ''}${!complete && begun ? ', so far' : ''}`),
    rows: [
      row('start', 'Colonies on the first day', 'Alive as that day began: 1 April for summer and year, 1 October for winter.'),
      row('splits', 'Made by splitting', 'Colonies made from your own within the period.'),
      row('purchased', 'Purchased', 'Packages, nucs and full colonies bought and installed.'),
      row('swarms', 'Swarms caught', 'Swarms hived as colonies of their own.'),
      row('sold', 'Sold', 'Colonies that left alive for money.'),
      row('given', 'Given away', 'Colonies that left alive for nothing.'),
      row('combined', 'United into another', 'Colonies that ended by uniting; not sold, and not there at the end, so the rule counts them as lost.'),
      row('end', 'Colonies on the last day', 'Alive as the day after the period began: 1 October, 1 April.'),
      row('atRisk', 'At risk', 'First day plus splits, purchases and swarms, less sold and given away.'),
      row('lost', 'Lost, united ones among them', 'At risk less colonies on the last day.'),
      row('dead', 'Of these recorded as lost', 'Dead, queenless beyond help, absconded or destroyed.'),
      row('rate', 'Loss', 'Lost of those at risk.'),
    ],
    remarks: [...remarks, 'The year is counted by itself: summer and winter rates are never added up.'],
  };
}

type Key = 'start' | 'splits' | 'purchased' | 'swarms' | 'sold' | 'given' | 'combined' | 'end' | 'atRisk' | 'lost' | 'dead' | 'rate';

function columnOf(facts: AnswerFacts, stretch: Stretch): Record<Key, AnswerCell> {
  const why = unknownWhy(facts, stretch);
  if (why !== null) {
    const blank = notKnown(why);
    return { start: blank, splits: blank, purchased: blank, swarms: blank, sold: blank, given: blank, combined: blank, end: blank, atRisk: blank, lost: blank, dead: blank, rate: blank };
  }
  // Moves between the operation's own yards are no increase and no removal of it.
  const { movedIn: _, movedOut: __, ...unit } = unitCounts('all', countsIn(facts, stretch));
  const { atRisk, lost } = usLoss(unit);
  const end = stretch.complete ? known(unit.end) : { value: unit.end, text: `${unit.end} on ${dayInWords(addDays(stretch.stop, -1))}`, why: null };
  if (atRisk !== unit.start + increases(unit) - removed(unit)) throw new Error('the turnover does not balance');
  return {
    start: known(unit.start), splits: known(unit.splits), purchased: known(unit.purchased), swarms: known(unit.swarms), sold: known(unit.sold), given: known(unit.given),
    combined: known(unit.combined), end, atRisk: known(atRisk), lost: known(lost), dead: known(unit.dead + (unit.absconded ?? 0)), rate: share(lost, atRisk, 'No colony was at risk.'),
  };
}
