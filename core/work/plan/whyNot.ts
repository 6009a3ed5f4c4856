import type { PlanChoice, WorkHours } from '#shared/contract/work.ts';
import { dayInWords, monthDayInWords, type Day } from '#shared/days.ts';
import { hoursLack, type HoursLack } from '#shared/hoursLack.ts';
import { daylightOn } from '../daylight.ts';
import { hoursOn } from '../hoursOn.ts';
import { slotOn } from '../workHours.ts';
import type { MadeProblem, PlanFacts } from './makeProblem.ts';
import type { Job } from './planProblem.ts';

/** Why something finds no place, or comes late, and what would mend it. */
export interface Why {
  readonly reason: string;
  readonly mend: string;
  /** The same of several times of one task together, which have different days. */
  readonly ofAll: { readonly reason: string; readonly mend: string };
}

/** Why nothing at all can be planned in some weeks. */
export const lackWords = {
  nobody: { reason: 'Nobody has hours for the bees in the weeks of this plan.', mend: 'Write down when somebody can go (Hours there are).' },
  unled: { reason: 'In the weeks of this plan only people who do not go alone have hours.', mend: 'Write down when somebody who goes alone can go along (Hours there are).' },
  dark: { reason: 'All hours in the weeks of this plan are in the dark.', mend: 'Write down some in daylight, such as a Saturday (Hours there are).' },
} as const satisfies Record<HoursLack, { reason: string; mend: string }>;

/** Of hours that hold for the whole plan. */
export function lackOf({ days }: Pick<MadeProblem, 'days'>, hours: WorkHours): Why | null {
  const [from, until] = [days[0], days.at(-1)];
  const lack = from === undefined || until === undefined ? null : hoursLack(hoursOn(hours, from, until));
  return lack === null ? null : { ...lackWords[lack], ofAll: lackWords[lack] };
}

/** Why work in a yard finds no place between two days of a plan that has hours, or not enough. */
export function whyNot(made: MadeProblem, { hours, choices }: PlanFacts, { yard, people, only }: Pick<Job, 'yard' | 'people' | 'only'>, earliest: number, latest: number, minutes: number): Why {
  const { days } = made;
  const name = made.yards[yard]?.name ?? 'the yard';
  const goingOn = (from: number, until: number) => made.outings.filter((outing) => outing.yards.includes(yard) && outing.day >= from && outing.day <= until);
  const going = goingOn(earliest, latest);
  const by = days[Math.min(latest, days.length - 1)];
  const until = by === undefined ? '' : monthDayInWords(by);
  const hoursMore = Math.max(0.5, Math.ceil(minutes / 30) / 2);
  const empty = Array.from({ length: Math.max(0, latest - earliest + 1) }, (_, at) => days[earliest + at]).find((day) => day !== undefined && hours.people.every((person) => slotOn(person, day) === null));
  const add = empty === undefined ? 'Add hours' : `Add hours on ${monthDayInWords(empty)}`;
  const forbiddenOn = (from: Day | undefined, to: Day | undefined) =>
    choices.flatMap(({ kind, day, yard: where, task }) => (kind === 'forbid' && task === null && day !== null && where === made.yards[yard]?.id && from !== undefined && to !== undefined && day >= from && day <= to ? [day] : []));
  // Held on a day it does not want for hours on others.
  if (only !== null) {
    const held = [...only].flatMap((at) => days[at] ?? []);
    const on = held.map(monthDayInWords).join(', ');
    const letGo = 'Let go of that day below the plan';
    const shut = held.filter((day) => forbiddenOn(day, day).length > 0);
    const told = shut.length === held.length
      ? { reason: `It is held on ${on}, and ${name} is forbidden then.`, mend: 'Let go of one of the two below the plan.' }
      : held.every((day) => goingOn(days.indexOf(day), days.indexOf(day)).length === 0)
        ? { reason: `It is held on ${on}, and ${held.length === 1 ? whyUnreached(hours, held[0] as Day, null) : 'the hours then are too few in daylight for the way there and back'}.`, mend: `${letGo}, or add hours on it.` }
        : { reason: `It is held on ${on}, and there is not enough time at ${name} for it.`, mend: `${letGo}, or add hours on it.` };
    return { ...told, ofAll: told };
  }
  if (going.length === 0) {
    const shut = forbiddenOn(days[earliest], by);
    const far = { reason: `On none of its days are there enough hours in daylight for the way to ${name} and back.`, mend: 'Add hours then, or lengthen a day.' };
    if (shut.length > 0) {
      return {
        reason: `${name} is forbidden on ${shut.map(monthDayInWords).join(', ')}, and no other day up to ${until} has enough hours in daylight for the way there and back.`,
        mend: `Let it be gone to on that day again, or ${add.charAt(0).toLowerCase()}${add.slice(1)}.`,
        ofAll: { reason: `${name} is forbidden on some of its days, and none of the others has enough hours in daylight for the way there and back.`, mend: 'Let it be gone to on those days again, or add hours.' },
      };
    }
    if (latest <= 0) return { reason: `Today has not enough hours in daylight for the way to ${name} and back.`, mend: 'Add hours today, or let it come late.', ofAll: far };
    return { reason: `No day up to ${until} has enough hours in daylight for the way to ${name} and back.`, mend: `${add}, or lengthen a day before ${until}.`, ofAll: far };
  }
  if (!going.some(({ crew }) => crew.length >= people)) {
    const mend = 'Add the hours of a helper, or say that fewer can do it.';
    return { reason: `It takes ${people} people, and on no day up to ${until} do as many have hours together for ${name}.`, mend, ofAll: { reason: `It takes ${people} people, and on none of its days do as many have hours together for ${name}.`, mend } };
  }
  const end = 'drop something else, or take help.';
  return {
    reason: `It needs ${hoursMore} h more at ${name} by ${until}; the hours up to then go into driving and other work.`, mend: `${add}, ${end}`,
    ofAll: { reason: `The hours up to its last day go into driving and other work, and it needs more of them at ${name} each time.`, mend: `Add hours, ${end}` },
  };
}

/** Why nobody can get to a yard and back on a day on which they may go there, as the rest of a sentence. `driving`: minutes there and back; null: not said. */
export function whyUnreached(hours: WorkHours, day: Day, driving: number | null): string {
  const lack = hoursLack(hoursOn(hours, day, day));
  if (lack === 'nobody') return 'nobody has hours then';
  if (lack === 'unled') return 'nobody who goes alone has hours then';
  if (lack === 'dark') return daylightOn(day, hours.place) === null ? 'the sun does not rise then' : 'all hours then are in the dark';
  return `the hours then are too few in daylight for the way there and back${driving === null ? '' : ` (${Math.round(driving)} min)`} and some work`;
}

/** Why a visit that is held on a day cannot be made on it, in a sentence, and what would mend it. */
export function whyNotHeld({ name, id }: { readonly name: string; readonly id: number }, day: Day, { hours, choices, fromHome }: { readonly hours: WorkHours; readonly choices: readonly PlanChoice[]; readonly fromHome: number | null }): string {
  const on = dayInWords(day);
  if (choices.some((one) => one.kind === 'forbid' && one.task === null && one.yard === id && one.day === day)) return `${name} cannot be visited on ${on}, where it is held: it is forbidden on that day too. Let go of one of the two below the plan.`;
  if (fromHome === null) return `${name} cannot be visited on ${on}, where it is held: the minutes from home are not written down. Write them down on the yard’s line in Book.`;
  return `${name} cannot be visited on ${on}, where it is held: ${whyUnreached(hours, day, 2 * fromHome)}. Add hours on that day, or let go of it below the plan.`;
}
