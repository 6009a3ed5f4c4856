import type { WorkHours, WorkSlot } from '#shared/contract/work.ts';
import { dayFromTyped, type DateOrder } from '#shared/days.ts';
import { typedFigure } from '#shared/typedMeasure.ts';
import { readSpan } from '#shared/typedSpan.ts';
import { dayText } from '../../parts/format.ts';
import { parsedDraft } from '../../parts/restoredParts.ts';
import { hoursWords as words } from './hoursWords.ts';
import { clock } from './planWeeks.ts';

/** One person's hours as typed: a stretch a weekday, empty for none. */
export interface TypedPerson {
  readonly name: string;
  readonly alone: boolean;
  readonly week: readonly string[];
  /** One line a day: `2026-12-24 none`, `2026-12-28 9-16`. */
  readonly exceptions: string;
}

export interface TypedHours {
  readonly people: readonly TypedPerson[];
  readonly latitude: string;
  readonly longitude: string;
  readonly zone: string;
}

/** So many people have hours, and so long are their names. */
export const mostPeople = 8;
const longestName = 40;

export const noPerson: TypedPerson = { name: '', alone: false, week: ['', '', '', '', '', '', ''], exceptions: '' };

export function typedHours({ people, place }: WorkHours): TypedHours {
  return {
    people: people.map(({ name, alone, week, exceptions }) => ({
      name, alone, week: week.map(slotText), exceptions: exceptions.map(({ day, slot }) => `${day} ${slot === null ? words.none : slotText(slot)}`).join('\n'),
    })),
    latitude: String(place.latitude), longitude: String(place.longitude), zone: place.zone,
  };
}

/** What was typed and not kept, as it was put away; null where it is none. */
export function readTypedHours(body: string): TypedHours | null {
  const { people, latitude, longitude, zone } = parsedDraft(body) ?? {};
  if (!Array.isArray(people) || people.length === 0 || !people.every(isTypedPerson)) return null;
  return typeof latitude === 'string' && typeof longitude === 'string' && typeof zone === 'string' ? { people, latitude, longitude, zone } : null;
}

function isTypedPerson(found: unknown): found is TypedPerson {
  if (typeof found !== 'object' || found === null) return false;
  const { name, alone, week, exceptions } = found as Partial<Record<keyof TypedPerson, unknown>>;
  return typeof name === 'string' && typeof alone === 'boolean' && typeof exceptions === 'string' && Array.isArray(week) && week.length === noPerson.week.length && week.every((slot) => typeof slot === 'string');
}

/** `18`, `17:30`: as somebody would type it, short enough for a narrow field. */
function short(minutes: number): string {
  return minutes % 60 === 0 ? String(minutes / 60) : clock(minutes);
}

export function slotText(slot: WorkSlot | null): string {
  return slot === null ? '' : `${short(slot.from)}-${short(slot.until)}`;
}

/** A stretch of one day; null where it is empty or says there is none, a sentence where it cannot be read. */
export function readSlot(typed: string): { readonly slot: WorkSlot | null } | { readonly sentence: string } {
  const text = typed.trim();
  if (text === '' || text === '-' || text === '–' || text.toLowerCase() === words.none) return { slot: null };
  const span = readSpan(text, { overnight: false });
  if (span === null) return { sentence: words.noSpan(text) };
  return span.ok ? { slot: { from: span.from, until: span.until } } : { sentence: span.sentence };
}

export type HoursReading = { readonly hours: WorkHours; readonly trouble: null } | { readonly hours: null; readonly trouble: { readonly sentence: string; readonly field: string } };

/** The hours as typed, or the first thing that cannot be read. Fields are named `name 0`, `week 0 3`, `exceptions 0`, `latitude`. */
export function readHours(typed: TypedHours, order: DateOrder): HoursReading {
  const no = (sentence: string, field: string): HoursReading => ({ hours: null, trouble: { sentence, field } });
  const people: WorkHours['people'] = [];
  for (const [at, person] of typed.people.entries()) {
    const name = person.name.trim();
    if (name === '') return no(words.noName, `name ${at}`);
    if (name.length > longestName) return no(words.longName(name, longestName), `name ${at}`);
    const week: (WorkSlot | null)[] = [];
    for (const [weekday, text] of person.week.entries()) {
      const read = readSlot(text);
      if ('sentence' in read) return no(words.badSlot(words.weekdays[weekday] ?? '', read.sentence), `week ${at} ${weekday}`);
      week.push(read.slot);
    }
    const exceptions: WorkHours['people'][number]['exceptions'] = [];
    for (const line of person.exceptions.split('\n').filter((one) => one.trim() !== '')) {
      const [first = '', ...rest] = line.trim().split(/\s+/);
      const day = dayFromTyped(first, order);
      const read = rest.length === 0 ? null : readSlot(rest.join(' '));
      if (day === null || read === null) return no(words.badException(line.trim()), `exceptions ${at}`);
      if ('sentence' in read) return no(words.badSlot(dayText(day), read.sentence), `exceptions ${at}`);
      exceptions.push({ day, slot: read.slot });
    }
    people.push({ name, alone: person.alone, week, exceptions });
  }
  const [latitude, longitude] = [degrees(typed.latitude, 90), degrees(typed.longitude, 180)];
  if (latitude === null) return no(words.badDegrees(typed.latitude), 'latitude');
  if (longitude === null) return no(words.badDegrees(typed.longitude), 'longitude');
  const zone = typed.zone.trim();
  if (zone === '') return no(words.noZone, 'zone');
  return { hours: { people, place: { latitude, longitude, zone } }, trouble: null };
}

function degrees(typed: string, most: number): number | null {
  const found = typedFigure(typed, most);
  const side = /^(?:°|deg|degrees)?\s*([nesw])?$/.exec(found?.unit ?? '?');
  // A point of the compass says on which side of nought it lies, so it goes with the right field and with no sign.
  if (found === null || side === null || (side[1] !== undefined && (found.amount < 0 || 'ns'.includes(side[1]) !== (most === 90)))) return null;
  const value = side[1] === 's' || side[1] === 'w' ? -found.amount : found.amount;
  return Math.abs(value) <= most ? value : null;
}
