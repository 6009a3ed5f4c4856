/** A stretch of the day as typed, in minutes after midnight; `until` is beyond 1440 where it goes past midnight. */
export interface TypedSpan {
  readonly from: number;
  readonly until: number;
}
export type SpanReading = ({ readonly ok: true } & TypedSpan) | { readonly ok: false; readonly sentence: string };

export interface SpanAsked {
  /** It may go on past midnight, as what was worked does. */
  readonly overnight: boolean;
}

const dayMinutes = 24 * 60;
/** Longer than anybody works in one stretch: a slip, and no night's work. */
const longestNight = 18 * 60;
const between = /\s*(?:[-–—\u2010\u2011\u2212]|\b(?:to|until|till)\b)\s*/i;
const time = /^(\d{1,2})(?:[:.h]?([0-5]\d))?\s*(?:(h)|([ap])\.?(?:m\.?)?)?$/i;
const example = 'like 17:30-20 or 5:30-8 pm';

type Half = 'a' | 'p';

interface Clock {
  readonly hour: number;
  readonly minute: number;
  readonly half: Half | null;
  /** Written as `17 h`. */
  readonly marked: boolean;
}

/** Minutes of the day as typed: `17:30`, `17.30`, `1730`, `17`, `17 h`, `5:30 pm`, `noon`; null if it is none. */
export function readClock(typed: string): number | null {
  const found = clockOf(typed);
  return found === null ? null : minutesOf(found, found.half);
}

/**
 * From when until when, as `17:30-20`, `5-8 pm`, `5.30pm to 8` or `1730 until 2000`. The half of the day may be said once for both:
 * it holds for the other too unless that would turn them round. Null where no two times were typed; where they were and
 * cannot be told, a sentence with what would mend it.
 */
export function readSpan(typed: string, { overnight }: SpanAsked): SpanReading | null {
  const text = typed.trim();
  const [first = '', second, more] = text.replace(/^from\s+/i, '').split(between);
  if (second === undefined || first === '') return null;
  const no = (sentence: string): SpanReading => ({ ok: false, sentence: `“${text}” ${sentence}` });
  if (more !== undefined) return no(`has more than two times. Type one stretch, ${example}.`);
  if (second === '') return no(`has only one time. Type from when until when, ${example}.`);
  const [from, until] = [clockOf(first), clockOf(second)];
  for (const [part, read] of [[first, from], [second, until]] as const) {
    if (read === null || minutesOf(read, read.half) === null) return no(`cannot be read: “${part}” is no time of the day. Type it like 17:30 or 5:30 pm.`);
  }
  if (from === null || until === null) return null;
  if (until.marked && !from.marked) return no('may be times or a number of hours. Type times like 14-15, or hours like 2.5.');
  const found = told(from, until, overnight);
  if (found !== null) return { ok: true, ...found };
  if (minutesOf(from, from.half) === minutesOf(until, until.half)) return no(`ends when it begins. Type from when until when, ${example}.`);
  if (isOpen(from) && isOpen(until)) return no('ends before it begins. Say which half of the day is meant, like 8 am-5 pm, or type 8-17.');
  return no(`ends before it begins. Turn it round, or type it ${example}.`);
}

function told(from: Clock, until: Clock, overnight: boolean): TypedSpan | null {
  const [plainFrom, plainUntil] = [minutesOf(from, from.half), minutesOf(until, until.half)];
  if (plainFrom === null || plainUntil === null) return null;
  // The other's half first, then as it stands, then the half that the other has not.
  const readings = (own: Clock, plain: number, half: Half | null): number[] => (own.half !== null || half === null ? [plain] : [minutesOf(own, half), plain, minutesOf(own, half === 'a' ? 'p' : 'a')].filter((one) => one !== null));
  const [firsts, lasts] = [readings(from, plainFrom, until.half), readings(until, plainUntil, from.half)];
  const pairs = firsts.flatMap((one) => lasts.map((other): TypedSpan => ({ from: one, until: other })));
  const forward = pairs.find((one) => one.until > one.from);
  if (forward !== undefined) return forward;
  // By no half of the day and no hour beyond noon: morning or evening, nobody can tell.
  if (!overnight || (isOpen(from) && isOpen(until))) return null;
  return pairs.map((one): TypedSpan => ({ from: one.from, until: one.until + dayMinutes })).filter((one) => one.until > one.from && one.until - one.from <= longestNight).toSorted((a, b) => a.until - a.from - (b.until - b.from))[0] ?? null;
}

/** Could be before noon or after. */
function isOpen({ half, hour }: Clock): boolean {
  return half === null && hour >= 1 && hour <= 12;
}

function clockOf(typed: string): Clock | null {
  const text = typed.trim().toLowerCase();
  if (text === 'noon') return { hour: 12, minute: 0, half: 'p', marked: false };
  if (text === 'midnight') return { hour: 24, minute: 0, half: null, marked: false };
  const parts = time.exec(text);
  return parts === null ? null : { hour: Number(parts[1]), minute: Number(parts[2] ?? 0), half: (parts[4] as Half | undefined) ?? null, marked: parts[3] !== undefined };
}

function minutesOf({ hour, minute }: Clock, half: Half | null): number | null {
  if (half !== null && (hour < 1 || hour > 12)) return null;
  const minutes = (half === null ? hour : (hour % 12) + (half === 'p' ? 12 : 0)) * 60 + minute;
  return minutes <= dayMinutes ? minutes : null;
}
