import type { Outing, WorkHours, WorkPlan } from '#shared/contract/work.ts';
import { daysBetween, monthDayInWords, type Day } from '#shared/days.ts';
import { slotOn } from '../workHours.ts';
import { catchUp, type MadeProblem } from './makeProblem.ts';
import type { FoundTrouble } from './planTroubles.ts';
import { lackWords } from './whyNot.ts';

/** Longer than this it may be done in several parts. */
const inOnePiece = 60;

interface Free {
  readonly from: number;
  readonly until: number;
  left: number;
}

/** Tasks at home, each on the first day from its earliest on which as many as it takes have minutes left for it, in daylight or not. */
export function atHome(made: Pick<MadeProblem, 'days' | 'home'>, hours: WorkHours, outings: readonly Outing[]): { home: WorkPlan['home']; troubles: FoundTrouble[] } {
  const { days } = made;
  const free = days.map((day) => hours.people.flatMap((person): Free[] => {
    const slot = slotOn(person, day);
    const out = outings.find((one) => one.day === day && one.people.includes(person.name));
    return slot === null ? [] : [{ ...slot, left: Math.max(0, slot.until - slot.from - (out === undefined ? 0 : out.back - out.leave)) }];
  }));
  const nobody = free.every((own) => own.length === 0);
  const home: WorkPlan['home'] = [];
  const troubles: FoundTrouble[] = [];
  for (const task of made.home) {
    const { key, what, people } = task;
    const first = Math.max(0, days.findIndex((day) => day >= task.earliest));
    let left = task.minutes;
    let enough = false;
    for (let at = first; at < days.length && left > 0; at += 1) {
      const day = days[at] as Day;
      const crew = (free[at] ?? []).toSorted((a, b) => b.left - a.left).slice(0, people);
      if (crew.length < people) continue;
      enough = true;
      const together = Math.min(...crew.map(({ until }) => until)) - Math.max(...crew.map(({ from }) => from));
      const minutes = Math.min(left, together, ...crew.map((one) => one.left));
      if (minutes <= 0 || (task.minutes <= inOnePiece && minutes < left)) continue;
      for (const one of crew) one.left -= minutes;
      left -= minutes;
      home.push({ day, task: { key, what, colonies: 0, of: 0, minutes: Math.round(minutes), people, late: Math.max(0, daysBetween(task.latest, day)), by: null } });
    }
    // As in the yards, what is overdue has some days to catch up before that is trouble.
    const by = task.latest < (days[0] ?? task.latest) ? (days[catchUp] ?? task.latest) : task.latest;
    const late = home.reduce((most, one) => (one.task.key === key ? Math.max(most, daysBetween(by, one.day)) : most), 0);
    const mend = 'Add an evening, or do it outside the hours written down.';
    const trouble = { key, what, yard: null };
    if (left > 0) {
      const why = nobody ? lackWords.nobody : enough ? { reason: 'No day in the plan has that many minutes left at home.', mend } : { reason: `It takes ${people} people, and on no day of the plan do as many have hours.`, mend: 'Add the hours of a helper, or say that fewer can do it.' };
      troubles.push({ ...trouble, kind: 'left', late: 0, minutes: Math.round(left), ...why, ofAll: why });
    } else if (late > 0) {
      troubles.push({ ...trouble, kind: 'late', late, minutes: Math.round(task.minutes), reason: `Up to ${monthDayInWords(by)} not that many minutes are left at home.`, mend, ofAll: { reason: 'Up to its last day not that many minutes are left at home each time.', mend } });
    }
  }
  return { home: home.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0)), troubles };
}
