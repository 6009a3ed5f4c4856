import type { MitesYard } from '#shared/contract/mites.ts';
import { converted, readMeasure } from '#shared/typedMeasure.ts';
import { roundTo, type MassUnit } from '#shared/units.ts';
import { fixed, number } from '../../parts/format.ts';
import { words } from './words.ts';

/** The yards in one sentence, the most urgent first. */
export function summary(yards: readonly MitesYard[]): string {
  const names = (of: (yard: MitesYard) => boolean) => yards.filter(of).map(({ code }) => code);
  const now = (verdict: MitesYard['verdict']) => names((yard) => yard.speaks === 'now' && yard.verdict === verdict);
  const above = yards.filter((yard) => yard.speaks === 'now' && yard.verdict === 'above');
  const treats = [...new Set(above.map(({ treat }) => number(treat, 2)))];
  const [below, open] = [now('below'), now('open')];
  const [treated, old, never] = [names(({ speaks }) => speaks === 'treated'), names(({ speaks }) => speaks === 'old'), names(({ speaks }) => speaks === 'never')];
  const parts = [
    ...(above.length > 0 ? [words.summaryAbove(above.map(({ code }) => code), treats.join(' or '))] : []),
    ...(open.length > 0 ? [words.summaryOpen(open)] : []),
    ...(below.length > 0 ? [words.summaryBelow(below)] : []),
    ...(treated.length > 0 ? [words.summaryTreated(treated)] : []),
    ...(old.length > 0 ? [words.summaryOld(old)] : []),
    ...(never.length > 0 ? [words.summaryNever(never)] : []),
  ].join('; ');
  return `${parts.charAt(0).toUpperCase()}${parts.slice(1)}.`;
}

/** `3.0 (1.4–6.3)`; of a few colonies that leave anything open, so in words. */
export function rateText({ per100, limits: [low, high] }: { readonly per100: number; readonly limits: readonly [number, number] }, few = false): string {
  if (few && high > 100) return `${fixed(per100, 1)}\u2002(${words.tooFew})`;
  return `${fixed(per100, 1)}\u2002(${fixed(low, 1)}–${high > 100 ? '>100' : fixed(high, 1)})`;
}

/** The temperature as typed, in °F, or why it cannot be taken; with its own sign it may be in the other unit. Both null where nothing is typed. */
export function readHigh(text: string, unit: MassUnit): { readonly value: number | null; readonly says: string | null } {
  if (text.trim() === '') return { value: null, says: null };
  const read = readMeasure(text, unit === 'kg' ? { unit: '°C', least: -50, most: 54, suchAs: '24' } : { unit: '°F', least: -60, most: 130, suchAs: '75' });
  if (!read.ok) return { value: null, says: read.sentence };
  const high = unit === 'kg' ? converted(read.value, '°C', '°F') : read.value;
  return { value: high === null ? null : roundTo(high, 1), says: null };
}
