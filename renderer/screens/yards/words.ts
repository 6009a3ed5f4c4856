import type { DateOrder } from '#shared/days.ts';
import { counted, number } from '../../parts/format.ts';

/** What the list of yards and a yard's own page say. */
export const words = {
  title: 'Yards',
  line: 'Every yard: how many colonies stand there, how far it is, and when somebody was last there.',
  loading: 'Reading the yards…',
  none: 'Here will be your yards, one line each. A yard is added on the Book page.',
  toBook: 'Go to Book',
  table: 'Yards',
  yard: 'Yard',
  code: 'Code',
  living: 'Living',
  room: 'Room',
  minutes: 'Minutes',
  lastVisit: 'Last visit',
  renewal: 'Renewal',
  all: 'All yards',
  marginVisit: 'Last visit',
  marginVisitText: 'The last day on which something was entered for a colony there, or for the yard as a whole.',
  marginRoom: 'Room',
  marginRoomText: 'How many colonies the yard holds, as written on the Book page. An en dash: not written down.',
  marginRenewal: 'Renewal',
  marginRenewalText: 'The day by which the yard’s registration has to be renewed, as you wrote it on the yard’s page.',
  renewalIn: (days: number) => (days === 0 ? 'today' : days > 0 ? `in ${counted(days, 'day', 'days')}` : `${counted(-days, 'day', 'days')} ago`),

  back: 'All yards',
  noSuch: 'There is no such yard in this book.',
  pageLine: (living: number, room: number | null, minutes: number | null) =>
    `${roomLine(living, room)}${minutes === null ? '' : `; ${counted(minutes, 'minute', 'minutes')} from home`}.`,

  stand: 'Colonies, in the order they stand in',
  standHelp: 'Drag a line, or press Alt and an arrow key on it, to move the colony. The round of the yard follows this order.',
  tags: 'Print tags for these colonies',
  standNone: 'No colony stands there now.',
  standTable: 'Colonies in stand order; arrow keys go through them, Alt with an arrow key moves one, Enter opens it',
  place: 'Place',
  colony: 'Colony',
  queen: 'Queen',
  lastLook: 'Last look',
  bees: 'Bees',
  brood: 'Brood',
  stores: 'Stores',
  frames: 'frames',
  mites: 'Mites',
  mitesUnit: 'in bees',
  mitesIn: (mites: number, bees: number) => `${number(mites)} in ${number(bees)}`,
  supers: 'Supers',
  moved: (label: string, place: number, of: number, yard: string) => `${label} now stands ${ordinal(place)} of ${of} at ${yard}.`,

  visits: 'Last visits',
  visitsNone: 'Nothing was entered for this yard yet.',
  kinds: (parts: readonly { label: string; entries: number }[]) => parts.map(({ label, entries }) => (entries === 1 ? label : `${label} (${number(entries)})`)).join(', '),
  equipment: 'Equipment there',
  equipmentNone: 'The shed account has nothing there.',
  item: 'Item',
  count: 'Counted',
  details: 'Access and registration',
  access: 'Access and contacts',
  notes: 'Notes',
  registration: 'Registration number',
  renewalDay: 'Renew by',
  notWritten: 'not written down',
  change: 'Change',
  changeLabel: 'Change access and registration',
  keep: 'Keep',
  leave: 'Leave as it was',
  kept: (yard: string) => `What is written down of ${yard} is kept.`,
  notADay: (order: DateOrder) => `That is no day. Write it like 2027-06-30 or ${order === 'month-first' ? '6/30/2027' : '30/6/2027'}, or leave it empty.`,
  marginStand: 'Stand order',
  marginStandText: 'A colony that comes new stands last until it is moved; one that leaves keeps its place for when it comes back.',
  marginMites: 'Mites',
  marginMitesText: 'The last count of each colony, as counted: mites in so many bees. One count says little; its range stands on the colony’s page.',
  marginEquipment: 'Equipment',
  marginEquipmentText: 'What the shed account has brought there less what it took away. Below nothing: more was taken away than was ever entered as brought.',
} as const;

function roomLine(living: number, room: number | null): string {
  const stand = living === 0 ? 'No colony stands there' : `${counted(living, 'colony stands', 'colonies stand')} there`;
  if (room === null) return stand;
  const free = room - living;
  return `${stand}, with room for ${number(room)}${free > 0 ? `, ${number(free)} free` : free < 0 ? `, ${number(-free)} over` : ', full'}`;
}

function ordinal(place: number): string {
  const tens = place % 100;
  const ending = tens >= 11 && tens <= 13 ? 'th' : (['th', 'st', 'nd', 'rd'][place % 10] ?? 'th');
  return `${place}${ending}`;
}
