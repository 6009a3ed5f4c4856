import type { AnswerCell, AnswerRow, AnswerSheet } from '#shared/contract/answers.ts';
import type { ColonyId } from '#shared/brands.ts';
import { addDays, dayFromIso, dayInWords, yearOf, type Day } from '#shared/days.ts';
import { aliveBefore } from '#core/journal/colonyState.ts';
import { nassPercent } from '../nassPercent.ts';
import { countsIn, known, notKnown, plural, share, stretchOf, takenForGranted, unknownWhy, type AnswerFacts } from './answerFacts.ts';

export interface Quarter {
  readonly year: number;
  readonly quarter: 1 | 2 | 3 | 4;
}

const months = ['January to March', 'April to June', 'July to September', 'October to December'];

const source = 'Quarterly count of colonies: USDA NASS, Honey Bee Colonies, release of 2 August 2021, notes 1 to 4. What belongs under “added” is from memory.';

export function quarterDays({ year, quarter }: Quarter): { from: Day; until: Day } {
  return { from: first(year, quarter * 3 - 2), until: quarter === 4 ? first(year + 1, 1) : first(year, quarter * 3 + 1) };
}

function first(year: number, month: number): Day {
  const found = dayFromIso(`${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-01`);
  if (found === null) throw new RangeError(`no month ${month} of ${year}`);
  return found;
}

export function quarterOf(day: Day): Quarter {
  return { year: yearOf(day), quarter: Math.ceil(Number(day.slice(5, 7)) / 3) as Quarter['quarter'] };
}

export function quarterName({ year, quarter }: Quarter): string {
  return `${months[quarter - 1] ?? ''} ${year}`;
}

/** The counts of a quarter. Splits of the quarter are not in the base, so its per cent is not a survey’s. */
export function quarterSheet(facts: AnswerFacts, quarter: Quarter): AnswerSheet {
  const { from, until } = quarterDays(quarter);
  const stretch = stretchOf(facts, from, until);
  const why = unknownWhy(facts, stretch);
  const row = (key: string, label: string, definition: string, cell: () => AnswerCell): AnswerRow => ({ key, label, definition, cells: [why === null ? cell() : notKnown(why)] });
  const counts = countsIn(facts, stretch);
  const there = facts.states.filter((state) => aliveBefore(state, from) || (state.origin === 'opening' && state.start >= from && state.start < stretch.stop)).length;
  const lost = counts.lost + counts.absconded;
  const added = counts.splits + counts.packages + counts.nucs + counts.swarms + counts.boughtColonies;
  const requeened = new Set<ColonyId>();
  for (const { day, body } of facts.requeens) if (day >= from && day < stretch.stop && 'colony' in body && body.colony !== undefined) requeened.add(body.colony);
  const surviving = facts.states.filter((state) => requeened.has(state.id) && (state.end === null || state.end >= stretch.stop)).length;
  const united = counts.combined;
  const percentOf = (count: number) => (): AnswerCell => {
    if (there === 0) return notKnown('No colony stood there on the first day, so there is no per cent.');
    const printed = `${nassPercent(count, { firstDay: there, maximum: null }).text} printed`;
    // Colonies made within the quarter can be lost or requeened in it: then there may be more of them than stood there, and no share.
    return { value: null, text: count > there ? `${printed}; ${count} for ${there} on the first day` : `${printed}; ${share(count, there, '').text}`, why: null };
  };
  return {
    key: 'quarter',
    title: `Quarter: ${quarterName(quarter)}`,
    source,
    when: `${dayInWords(from)} to ${dayInWords(addDays(until, -1))}${stretch.complete ? '' : `, so far to ${dayInWords(facts.asOf)}`}`,
    running: !stretch.complete,
    columns: ['All'],
    rows: [
      row('firstDay', 'Colonies on the first day', 'Alive as the quarter began.', () => known(there)),
      row('maximum', 'Maximum, if none came from another state', 'First day plus colonies moved into the state in the quarter. The book knows no state lines: add those you brought across one.', () => known(there)),
      row('lost', 'Lost', 'Recorded lost or absconded in the quarter; united ones are not among them.', () => known(lost)),
      row('lostPercent', 'Per cent lost', 'Of the maximum, in whole per cent: “-” is none, “(Z)” less than half a per cent.', percentOf(lost)),
      row('added', 'Added', 'Splits, packages, nucs, swarms and full colonies that began in the quarter.', () => known(added)),
      row('renovated', 'Renovated', 'Colonies that lived through the quarter and were requeened in it. New bees given to a living colony are not a record of their own here: add those.', () => known(surviving)),
      row('renovatedPercent', 'Per cent renovated', 'Of the maximum, as above.', percentOf(surviving)),
      row('lastDay', 'Colonies at the end', 'Alive when the quarter was over, for checking; sales and uniting are not in the table.', () => (stretch.complete ? known(counts.closing) : { value: counts.closing, text: `${counts.closing} on ${dayInWords(facts.asOf)}`, why: null })),
    ],
    remarks: [
      ...(why === null ? takenForGranted(facts, stretch) : []),
      ...(why === null && united > 0 ? [`${plural(united, 'colony was', 'colonies were')} united into others in the quarter: neither lost nor renovated here.`] : []),
      'A state asks for the colonies that stand in it. If your yards lie in more than one, answer for each by itself.',
    ],
  };
}
