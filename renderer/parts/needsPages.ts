import type { YardId } from '#shared/brands.ts';

/** A page of what needs doing. */
export interface NeedsPage {
  readonly at: string;
  readonly name: string;
}

/** The pages that there are, in the order of their links; a page and its link come together. */
export const needsPages: readonly NeedsPage[] = [
  { at: '/needs', name: 'All' },
  { at: '/needs/mites', name: 'Mites' },
  { at: '/needs/stores', name: 'Stores and winter' },
  { at: '/needs/space', name: 'Space and swarms' },
  { at: '/needs/queens', name: 'Queens' },
  { at: '/needs/tally', name: 'How the rules have done' },
];

/** A page of the needs, opened at a yard. */
export function atYard(page: string, yard: YardId): string {
  return `${page}/${yard}`;
}

/** The yard that an address names; null for none, and for what is no number of one. */
export function yardInAddress(part: string | undefined): YardId | null {
  return part !== undefined && /^[1-9]\d{0,8}$/.test(part) ? (Number(part) as YardId) : null;
}
