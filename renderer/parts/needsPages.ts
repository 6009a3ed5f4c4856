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
