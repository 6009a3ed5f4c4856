import type { PlanChoice, PlannedTrouble, WorkPlan } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import type { HoursLack } from '#shared/hoursLack.ts';
import { loadLines, type Load } from '#shared/loadWords.ts';
import { counted, dayShort, dayText, dayWithWeekday, fixed, momentText } from '../../parts/format.ts';
import { spell, type WeekLoadHere } from './planWeeks.ts';
import type { NamedTrouble } from './troubleGroups.ts';

const weather = { any: 'any weather', dry: 'a dry day', flying: 'a dry, warm day' } as const;

const weekLack: Readonly<Record<HoursLack, string>> = { nobody: 'Nobody has hours in these days.', dark: 'All hours of these days are in the dark.', unled: 'Nobody who goes alone has hours in these days.' };

/** What a week is planned for, of the hours that it has. Work at home that has place in hours of no use at the hives takes none of the others. */
function weekLoad({ out, home, have, all, lack }: WeekLoadHere): string {
  const atHome = home === 0 ? '' : `${spell(home)} at home`;
  if (lack !== null && out === 0) return `${weekLack[lack]}${home === 0 ? '' : ` ${atHome}.`}`;
  if (home <= all - have) return `${spell(out)} out of the ${spell(have)} that there are${home === 0 ? '' : `, and ${atHome}`}.`;
  return `${spell(out)} out and ${atHome}, of the ${spell(all)} that there are.`;
}

/** The same in the narrow cell of a month. */
function weekShort({ out, home, have, all, lack }: WeekLoadHere): string {
  const lacks: Readonly<Record<HoursLack, string>> = { nobody: 'no hours', dark: 'dark', unled: 'nobody who goes alone' };
  if (home > all - have) return `${spell(out + home)} of ${spell(all)}`;
  const bees = out > 0 ? `${spell(out)} of ${spell(have)}` : lack === null ? `${spell(have)} free` : lacks[lack];
  return home === 0 ? bees : `${bees}, ${spell(home)} at home`;
}

/** So many days are named one by one. */
const namedDays = 8;

/** A task with no place or a late one; of a repeating task with the days of its times. */
function trouble({ what, late, on }: Pick<NamedTrouble, 'what' | 'late' | 'on'>): string {
  const [first, last] = [on[0], on.at(-1)];
  if (first === undefined || last === undefined) return `${what}${late > 0 ? `, ${counted(late, 'day', 'days')} late` : ''}`;
  const days = on.length > namedDays ? `${on.length} times from ${dayShort(first)} to ${dayShort(last)}` : `${on.length} times, ${on.slice(0, -1).map(dayShort).join(', ')} and ${dayShort(last)}`;
  return `${what}, ${days}${late > 0 ? `, up to ${counted(late, 'day', 'days')} late` : ''}`;
}

const ofYard = (yard: string | null, own: readonly string[]) => `${yard === null ? '' : `${yard}: `}${own.join('; ')}`;

/** What the page of the plan says. */
export const words = {
  title: 'Work',
  pages: 'Pages of the work',
  line: 'Which yards on which evenings and Saturdays, in the fewest trips, and whether it fits the hours there are.',
  loading: 'Reading the plan…',
  make: 'Plan the work',
  again: 'Plan again',
  keep: 'Keep this plan',
  stop: 'Stop',
  empty: 'Here will be your plan: each visit with its day, its tasks and the reason for each. It is worked out from the record, the rules and your hours.',
  nothing: 'Nothing is to be done in the next eight weeks, as far as the record and the rules can tell.',
  yardsFirst: 'Write down your yards, and how far they are, first',
  coloniesFirst: 'Install colonies first',
  toHours: 'Write your hours down',
  toCalendar: 'See which calendars take time',
  lack: {
    nobody: 'There are no hours for the bees yet. Say when you can be with them, and the work is planned into that time.',
    unled: 'In the next eight weeks only people who do not go alone have hours. Write down when somebody who does can go along, and the work is planned into that time.',
    dark: 'All hours of the next eight weeks are in the dark. Write down some in daylight, such as a Saturday, and the work is planned into that time.',
  } satisfies Record<HoursLack, string>,
  lackTaken: 'No hours are left in the next eight weeks: what was written down for single days, or calendars that were brought in, takes all of them.',
  waiting: (count: number, overdue: number) => `${counted(count, 'task waits', 'tasks wait')} for a day${overdue === 0 ? '' : count === 1 ? ' and is overdue' : `, ${overdue === count ? 'all' : overdue} of them overdue`}`,
  unsaid: 'Nobody has said yet when there is time for the bees. Say when you can be with them, and the work is planned into that time.',
  makeHouse: (pattern: string) => `Plan by the program’s own hours for now (${pattern})`,
  byHouse: (pattern: string) => `This plan goes by the program’s own hours, ${pattern}, as nobody has said when there is time.`,
  kept: (made: string) => `Kept ${momentText(made)}.`,
  notKept: 'This plan is not kept yet: what is in your calendar and on the next comparison is the plan kept before.',
  staleKept: 'It stays as it was promised until you plan again and keep that plan.',
  notKeptFirst: 'This plan is not kept yet. Keep it, and it goes into the calendar and is compared with what you did.',
  keptNow: 'The plan is kept; the calendar has it too.',
  gap: (gap: number | null) => (gap === null ? '' : gap < 0.0005 ? 'No plan with less driving and less lateness exists: this one is proven best.' : `At most ${fixed(gap * 100, gap < 0.1 ? 1 : 0)} % could still be gained.`),
  seconds: (seconds: number) => `${fixed(seconds, 0)}\u00a0s so far; you can go on meanwhile.`,
  running: 'A first plan is being worked out.',
  summary: ({ outings, driving, naive, troubles }: WorkPlan) => {
    const visits = outings.reduce((sum, outing) => sum + outing.visits.length, 0);
    // What finds no place is not driven to, so nothing is saved by it.
    const saved = naive > driving && !troubles.some(({ kind }) => kind === 'left') ? ` Each task on its earliest free day, and each round when due, would be ${spell(naive)} of driving; this is ${spell(driving)}.` : ` ${spell(driving)} of driving.`;
    return `${counted(visits, 'visit', 'visits')} in ${counted(outings.length, 'trip', 'trips')}.${saved}`;
  },
  changes: (same: number, moved: number, gone: number) => `Against the plan kept before: ${counted(same, 'visit', 'visits')} as ${same === 1 ? 'it was' : 'they were'}, ${moved} otherwise${gone === 0 ? '' : `, ${gone} no longer planned`}.`,
  noTrip: 'No trip could be planned.',
  looking: (day: Day) => `This is the plan that was kept, seen as of ${dayText(day)}. Go back to today to plan again.`,
  lookingNone: (day: Day) => `No plan that is kept now was made by ${dayText(day)}. Go back to today for the plan from today on.`,
  troubles: 'What does not fit',
  troublesNone: 'Everything that is due fits, and in time.',
  troublesOverdue: 'Everything that was not overdue before fits, and in time.',
  moreTroubles: (count: number) => `and ${count} more`,
  trouble,
  ofYard,
  troubled: (kind: PlannedTrouble['kind'], yards: readonly (readonly [string | null, readonly string[]])[]) => `${kind === 'left' ? 'No place for ' : ''}${yards.map(([yard, own]) => ofYard(yard, own)).join('. ')}.`,
  troubledMany: (kind: PlannedTrouble['kind'], count: number) => `${count} tasks ${kind === 'left' ? 'find no place' : 'come late'}.`,
  which: 'Which ones',
  overdue: (count: number, last: Day) => `${count === 1 ? 'One task was past its last day' : `${count} tasks were past their last day`} before this plan; ${count === 1 ? 'it is' : 'the last of them is'} planned for ${dayWithWeekday(last)}.`,
  overdueLine: (yard: string | null, what: string, latest: Day, day: Day, because: string | null) => `${yard === null ? '' : `${yard}: `}${what}, overdue since ${dayText(latest)}; planned for ${dayWithWeekday(day)}.${because === null ? '' : ` ${because}`}`,
  views: 'View',
  view: { board: 'Board', week: 'Week', month: 'Month' },
  earlier: 'Week before',
  later: 'Week after',
  weekOf: (monday: Day, sunday: Day) => `${dayShort(monday)} to ${dayText(sunday)}`,
  weekLoad,
  weekShort,
  weekOver: (over: number) => `That is ${spell(over)} more than there is.`,
  board: (from: Day, until: Day) => `Visits by yard and day, ${dayText(from)} to ${dayText(until)}`,
  boardHelp: 'Arrow keys go from cell to cell, Enter opens a visit. Space picks it up, the left and right arrows carry it to another day, Space puts it down, Esc lets it go. Or drag it.',
  yard: 'Yard',
  home: 'At home',
  load: 'Work of room',
  loadOf: (working: number, room: number) => `${spell(working)} of ${spell(room)}`,
  over: (minutes: number) => `${spell(minutes)} too much`,
  idle: (have: number) => `${spell(have)} free`,
  atHome: (minutes: number) => `${spell(minutes)} at home`,
  noHours: 'no hours',
  dark: 'dark',
  unled: 'nobody who goes alone',
  noTask: 'no task',
  more: (count: number) => `+${count}`,
  held: { pin: 'pinned', lock: 'promised' } as const,
  late1: 'late',
  cellNone: (yard: string, day: Day) => `${yard}, ${dayWithWeekday(day)}: no visit`,
  cell: (yard: string, day: Day, from: string, minutes: number, tasks: number, held: string | null) => `${yard}, ${dayWithWeekday(day)}: visit at ${from}, ${spell(minutes)}, ${counted(tasks, 'task', 'tasks')}${held === null ? '' : `, ${held}`}`,
  picked: (yard: string, day: Day) => `${yard} is picked up from ${dayWithWeekday(day)}. Left and right carry it, Space puts it down, Esc lets it go.`,
  over_: (yard: string, day: Day, why: string | null) => `${yard} over ${dayWithWeekday(day)}.${why === null ? '' : ` ${why}`}`,
  workShort: (short: string) => `Its work is ${short} more than there is room for then.`,
  nobodyOn: (day: Day) => `Nobody has hours on ${dayWithWeekday(day)}; write some down first.`,
  darkOn: (day: Day) => `All hours of ${dayWithWeekday(day)} are in the dark.`,
  unledOn: (day: Day) => `Nobody who goes alone has hours on ${dayWithWeekday(day)}.`,
  notThere: (why: string) => `It cannot be put there. ${why} Carry it on, or press Esc.`,
  beyond: (until: Day) => `The plan ends with ${dayWithWeekday(until)}.`,
  promised: (yard: string, day: Day) => `${yard} is promised for ${dayWithWeekday(day)}. Let it go first, then move it.`,
  letGo: (yard: string, day: Day) => `${yard} stays on ${dayWithWeekday(day)}.`,
  staysInYard: 'A visit stays in its yard; carry it to another day.',
  past: (day: Day) => `${dayWithWeekday(day)} is over.`,
  moving: (yard: string, from: Day, to: Day) => `${yard} goes from ${dayWithWeekday(from)} to ${dayWithWeekday(to)}; the plan is worked out anew around it.`,
  movedBack: (yard: string, day: Day) => `${yard} is back on ${dayWithWeekday(day)}.`,
  asItWas: 'The plan is as it was before.',
  backAnew: 'Taken back. Other things were changed meanwhile, so the plan is worked out anew.',
  chose: (what: string) => `Fixed: ${what}. The plan is worked out anew around it.`,
  unchosen: (what: string) => `No longer fixed: ${what}.`,
  chosenAgain: (what: string) => `Fixed again: ${what}.`,
  unchose: (what: string) => `No longer fixed: ${what}. The plan is worked out anew.`,
  notUndone: 'That could not be taken back: something of it was changed meanwhile. See what is fixed below the plan.',
  visit: (yard: string, day: Day) => `${yard}, ${dayWithWeekday(day)}`,
  visitLine: (arrive: string, leave: string, out: string, back: string, people: readonly string[]) => `There from ${arrive} to ${leave}. Leave home at ${out}, back at ${back}: ${people.join(' and ')}.`,
  visitLoad: (bring: readonly Load[]) => `To load for the whole trip: ${loadLines(bring).join(', ')}.`,
  weather: (need: keyof typeof weather) => `Wants ${weather[need]}.`,
  task: 'Task',
  colonies: 'Colonies',
  minutes: 'Minutes',
  by: 'Not after',
  why: 'Why',
  of: (count: number, of: number) => (of === 0 ? '' : count === of ? String(of) : `${count} of ${of}`),
  since: (day: Day) => `overdue since ${dayText(day)}`,
  daysLate: (days: number) => `, ${counted(days, 'day', 'days')} late`,
  moveTo: 'Move it to',
  move: 'Move this visit',
  nowhereTo: 'No other day of the plan has hours and daylight enough to go there.',
  dayFree: (room: string) => `free, room for ${room} of work`,
  dayPart: (taken: string, room: string) => `${taken} of ${room} taken`,
  dayFull: (room: string) => `all of ${room} taken`,
  dayBeside: (names: string, fill: string) => `with ${names}, ${fill}`,
  dayInstead: (names: string, room: string) => `${names} would go elsewhere, room for ${room}`,
  dayBoth: (names: string, fill: string, elsewhere: string) => `with ${names}, ${fill}; ${elsewhere} would go elsewhere`,
  dayShort: (short: string) => `${short} too little for this work`,
  dayForbidden: 'ruled out so far',
  noRoomOn: (yard: string, day: Day) => `${dayWithWeekday(day)} has no room for the way to ${yard} and back.`,
  andMore: (count: number) => ` and ${count} more`,
  pin: 'Pin it here',
  lock: 'Promise it',
  forbid: 'Not on this day',
  drop: 'Leave this out',
  close: 'Close',
  trip: 'Print the trip sheet',
  round: 'Enter the round',
  chosen: 'What you have fixed',
  chosenNone: 'Nothing is fixed: the plan may put every visit where it fits best.',
  lift: 'Let it go',
  choice: (kind: PlanChoice['kind'], day: Day | null, yard: string | null, task: string | null) => {
    const what = task ?? yard ?? 'this';
    const on = day === null ? '' : ` ${dayWithWeekday(day)}`;
    return { pin: `${what} on${on}`, lock: `${what} promised for${on}`, forbid: `${what} not on${on}`, drop: `${what} left out` }[kind];
  },
  marginPlan: 'How the plan is made',
  marginPlanText: 'From tasks with a first and a last day, minutes and people, the ways between the yards, the hours and the daylight: as little lateness as can be, the gravest work first, then as few minutes of driving. What you pin or promise stays.',
  marginHeld: 'Pin and promise',
  marginHeldText: 'A pinned visit stays on its day however often the plan is worked out anew. A promised one stays too, and cannot be carried to another day before you let it go: somebody counts on it.',
  marginWeather: 'The plan knows no forecast. Each trip says what weather it wants. When rain is forecast, carry the visit to another day, or write the day down as one without hours (Hours there are).',
  marginMinutes: 'Minutes',
  caution: 'Do not work far yards alone without a plan for a bad sting; a full deep box is heavy, lift it with a helper or frame by frame.',
  weekday: ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const,
  weekdays: ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const,
  weekTrip: (out: string, back: string, people: readonly string[], driving: number) => `Away from ${out} to ${back}, ${spell(driving)} of it driving: ${people.join(' and ')}.`,
  noOuting: 'No trip this week.',
  month: (from: Day, until: Day) => `Trips by day, ${dayText(from)} to ${dayText(until)}`,
  weekHead: 'Week',
  trips: 'Trips',
} as const;
