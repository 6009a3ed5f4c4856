import type { boxes } from '#shared/entryForms.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { countedAs, isSized } from './itemName.ts';

/** What hives are made of by the house rules, read once for a whole fold. */
export interface HiveRules {
  readonly usual: 8 | 10;
  readonly startDeeps: number;
  readonly fullDeeps: number;
  readonly nucFrames: number;
  readonly splitFrames: number;
  readonly drawnDays: number;
  readonly base: readonly { readonly item: string; readonly count: number }[];
  readonly excluder: boolean;
}

export function hiveRules(rules: RuleValues): HiveRules {
  const rule = (key: string) => numberRule(rules, key);
  return {
    usual: rule('stock.frames') < 9 ? 8 : 10,
    startDeeps: Math.round(rule('stock.startDeeps')), fullDeeps: Math.round(rule('order.deeps')),
    nucFrames: Math.round(rule('stock.nucFrames')), splitFrames: Math.round(rule('stock.splitFrames')), drawnDays: Math.round(rule('stock.drawnDays')),
    base: [
      { item: 'bottom board', count: rule('order.bottomBoards') }, { item: 'entrance reducer', count: rule('order.entranceReducers') },
      { item: 'inner cover', count: rule('order.innerCovers') }, { item: 'outer cover', count: rule('order.outerCovers') },
      { item: 'stand', count: rule('order.stands') }, { item: 'feeder', count: rule('order.feeders') },
    ].filter(({ count }) => count > 0),
    excluder: rule('order.excluders') > 0,
  };
}

const numbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const numberIn = (word: string) => (/^\d+$/.test(word) ? Number(word) : numbers.indexOf(word));

/** The hive that an install's or a split's note tells of: "eight-frame hive", "on two deeps". Null where it says nothing of it. */
export function hiveInNote(note: string | undefined): { readonly frames: 8 | 10 | null; readonly deeps: number | null } {
  const words = note?.toLowerCase() ?? '';
  const frames = /\b(8|10|eight|ten)[- ]frame\b/.exec(words)?.[1];
  const deeps = /\b(1|2|3|one|two|three) deeps?\b/.exec(words)?.[1];
  return { frames: frames === undefined ? null : numberIn(frames) === 8 ? 8 : 10, deeps: deeps === undefined ? null : numberIn(deeps) };
}

/** "on five frames": bees sold or given away without their hive; "the hive stays": on none. Null where the note says neither. */
export function framesInNote(note: string | undefined): number | null {
  const words = note?.toLowerCase() ?? '';
  if (/\bhive stays\b/.test(words)) return 0;
  const found = /\bon (\d+|[a-z]+) frames\b/.exec(words)?.[1];
  const count = found === undefined ? -1 : numberIn(found);
  return count > 0 ? count : null;
}

/** The box of a supers entry and the frames that hang in it. */
export const boxNames: Readonly<Record<(typeof boxes)[number], { readonly box: string; readonly frame: string }>> = {
  deep: { box: 'deep box', frame: 'deep frame' }, medium: { box: 'medium super', frame: 'medium frame' }, shallow: { box: 'shallow super', frame: 'shallow frame' },
};

/** A part for a hive of so many frames, as it is counted. */
export function partFor(item: string, frames: 8 | 10, usual: 8 | 10): string {
  return isSized(item) || item === 'deep box' || item === 'medium super' || item === 'shallow super' ? countedAs({ item, frames }, usual) : item;
}
