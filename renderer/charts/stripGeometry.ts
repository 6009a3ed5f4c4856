import type { ColonyStrip } from '#shared/contract/strip.ts';
import { daysBetween, type Day } from '#shared/days.ts';
import type { QueenView } from '#shared/contract/journal.ts';
import { linearScale, niceTicks, px } from './scale.ts';
import { spread, textWidth } from './text.ts';
import { monthTicks } from './timeTicks.ts';
import { words } from './words.ts';

export type StripSeason = ColonyStrip['seasons'][number];
interface Point {
  readonly x: number;
  readonly y: number;
}
interface Tick {
  readonly y: number;
  readonly label: string;
}
interface Lane {
  readonly name: string;
  readonly top: number;
  readonly bottom: number;
  readonly ticks: readonly Tick[];
}
export interface StripMarkPlace {
  readonly x: number;
  /** Where it ends, for what lasts; the same as `x` else. */
  readonly to: number;
  readonly title: string;
  readonly queen?: QueenView | null;
  readonly label?: string;
}

export interface StripGeometry {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** The stretch in which the colony was alive and the days had come. */
  readonly life: { readonly from: number; readonly to: number; readonly ended: boolean };
  readonly winterX: number | null;
  readonly months: readonly { readonly x: number; readonly labelX: number; readonly label: string }[];
  readonly frames: Lane & { readonly lines: readonly { readonly key: 'bees' | 'brood' | 'stores'; readonly place: number; readonly path: string; readonly points: readonly Point[]; readonly label: Point | null }[] };
  readonly mites: Lane & { readonly counts: readonly { readonly x: number; readonly y: number; readonly high: number; readonly low: number; readonly cut: boolean; readonly title: string }[] };
  readonly supers: Lane & { readonly path: string; readonly labels: readonly { readonly x: number; readonly y: number; readonly text: string }[] };
  readonly rows: readonly { readonly key: 'queens' | 'treatments' | 'feeds' | 'honey'; readonly name: string; readonly y: number; readonly marks: readonly StripMarkPlace[] }[];
}

const left = 104;
const rightRoom = 56;

/** Where everything of one season stands, in pixels. `honeyText` writes pounds in the book's unit. */
export function stripGeometry(strip: ColonyStrip, season: StripSeason, width: number, honeyText: (pounds: number) => string): StripGeometry {
  const right = width - rightRoom;
  const days = daysBetween(season.from, season.until);
  const time = linearScale([0, days], [left, right]);
  const at = (day: Day) => px(time(daysBetween(season.from, day)));
  const inside = (one: { readonly day: Day }) => one.day >= season.from && one.day < season.until;
  const clamp = (day: Day) => at(day < season.from ? season.from : day > season.until ? season.until : day);

  const looks = strip.looks.filter(inside);
  const top = 14;
  const framesBottom = top + 104;
  const most = Math.max(10, ...looks.flatMap(({ bees, brood, stores }) => [bees ?? 0, brood ?? 0, stores ?? 0]));
  const frame = linearScale([0, most], [framesBottom, top]);
  const lines = (['bees', 'brood', 'stores'] as const).map((key, place) => {
    const points = looks.flatMap((look) => (look[key] === null ? [] : [{ x: at(look.day), y: px(frame(look[key])) }]));
    return { key, place, points, path: points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x} ${y}`).join('') };
  });
  const named = lines.filter(({ points }) => points.length > 0);
  const heights = spread(named.map(({ points }) => points.at(-1)?.y ?? 0), 15, top + 4, framesBottom);

  const counts = strip.mites.filter(inside);
  const mitesTop = framesBottom + 22;
  const mitesBottom = mitesTop + 62;
  // The axis goes by the counts; an interval that reaches far beyond them is cut at the top and says so.
  const highest = Math.max(3, ...counts.map(({ per100 }) => per100 * 1.25), Math.min(12, Math.max(0, ...counts.map(({ range }) => range[1]))));
  const mite = linearScale([0, highest], [mitesBottom, mitesTop]);

  const supersTop = mitesBottom + 24;
  const supersBottom = supersTop + 34;
  const { path, labels } = supersSteps(strip, season, at, clamp, supersTop, supersBottom);

  const marks = (list: readonly { readonly day: Day; readonly sentence: string }[]) => list.filter(inside).map((one) => ({ x: at(one.day), to: at(one.day), title: words.onDay(one.day, one.sentence) }));
  const rowAt = (place: number) => supersBottom + 26 + place * 24;
  const rows: StripGeometry['rows'] = [
    { key: 'queens', name: words.queens, y: rowAt(0), marks: strip.queens.filter(inside).map((one) => ({ x: at(one.day), to: at(one.day), title: words.onDay(one.day, one.sentence), queen: one.queen })) },
    {
      key: 'treatments',
      name: words.treatments,
      y: rowAt(1),
      marks: strip.treatments
        .filter((one) => one.day < season.until && (one.until ?? one.day) >= season.from)
        .map((one) => ({ x: clamp(one.day), to: clamp(lastDay(one, strip)), title: words.onDay(one.day, one.sentence) })),
    },
    { key: 'feeds', name: words.feeds, y: rowAt(2), marks: marks(strip.feeds) },
    { key: 'honey', name: words.honey, y: rowAt(3), marks: roomForLabels(strip.honey.filter(inside).map(({ day, lb }) => ({ x: at(day), to: at(day), title: words.onDay(day, words.honeyTaken(honeyText(lb))), label: honeyText(lb) }))) },
  ];
  const bottom = rowAt(3) + 14;
  return {
    width, height: bottom + 24, left, right, top, bottom,
    life: { from: clamp(strip.start), to: clamp(strip.until), ended: strip.ended && strip.until >= season.from && strip.until < season.until },
    winterX: season.winter > season.from && season.winter < season.until ? at(season.winter) : null,
    months: monthTicks(season.from, days).map(({ at: day, labelAt, label }) => ({ x: px(time(day)), labelX: px(time(labelAt)), label })),
    frames: {
      name: words.frames, top, bottom: framesBottom, ticks: ticksOf(most, frame, 3),
      lines: lines.map((line) => {
        const place = named.indexOf(line);
        return { ...line, label: place < 0 ? null : { x: px((line.points.at(-1)?.x ?? 0) + 7), y: px((heights[place] ?? 0) + 4) } };
      }),
    },
    mites: {
      name: words.mites, top: mitesTop, bottom: mitesBottom, ticks: ticksOf(highest, mite, 2),
      counts: counts.map(({ day, mites, bees, per100, range }) => ({
        x: at(day), y: px(mite(per100)), low: px(mite(range[0])), high: px(mite(Math.min(highest, range[1]))), cut: range[1] > highest, title: words.miteCount(day, mites, bees, per100, range),
      })),
    },
    supers: { name: words.supers, top: supersTop, bottom: supersBottom, ticks: [], path, labels },
    rows,
  };
}

/** A treatment is drawn as one day where no end was written down, and never past the colony's own end. */
function lastDay(treatment: { readonly day: Day; readonly until: Day | null }, strip: ColonyStrip): Day {
  const until = treatment.until !== null && treatment.until > treatment.day ? treatment.until : treatment.day;
  return strip.ended && strip.until >= treatment.day && until > strip.until ? strip.until : until;
}

/** A label that would run into the next mark is left to the mark's title. */
function roomForLabels(marks: readonly (StripMarkPlace & { readonly label: string })[]): StripMarkPlace[] {
  return marks.map(({ label, ...mark }, place) => {
    const next = marks[place + 1];
    return next === undefined || mark.x + 9 + textWidth(label) < next.x - 8 ? { ...mark, label } : mark;
  });
}

function ticksOf(most: number, scale: (value: number) => number, count: number): Tick[] {
  return niceTicks(0, most, count).map((value) => ({ y: px(scale(value)), label: String(value) }));
}

/** A closed step line of how many supers were on, from the start of the season or of the colony to where its days end. */
function supersSteps(strip: ColonyStrip, season: StripSeason, at: (day: Day) => number, clamp: (day: Day) => number, top: number, bottom: number): { path: string; labels: { x: number; y: number; text: string }[] } {
  const before = strip.supers.filter(({ day }) => day < season.from).at(-1)?.on ?? 0;
  const changes = strip.supers.filter(({ day }) => day >= season.from && day < season.until);
  if (before === 0 && changes.length === 0) return { path: '', labels: [] };
  const scale = linearScale([0, Math.max(4, before, ...changes.map(({ on }) => on))], [bottom, top]);
  let path = `M${clamp(strip.start)} ${bottom}V${px(scale(before))}`;
  const labels = before > 0 ? [{ x: clamp(strip.start) + 2, y: px(scale(before)) - 3, text: String(before) }] : [];
  // Several changes of a day are one step, to what is on that evening.
  const evenings = [...new Map(changes.map((change) => [change.day, change.on]))];
  for (const [day, on] of evenings) {
    path += `H${at(day)}V${px(scale(on))}`;
    if (on > 0) labels.push({ x: at(day) + 2, y: px(scale(on)) - 3, text: String(on) });
  }
  return { path: `${path}H${clamp(strip.until)}V${bottom}Z`, labels };
}
