/** The pages of the work, in the order of their links. */
export const workPages = [
  { at: '/work', name: 'Plan' },
  { at: '/work/tasks', name: 'Own tasks' },
  { at: '/work/hours', name: 'Hours there are' },
  { at: '/work/worked', name: 'Hours worked' },
  { at: '/work/calendar', name: 'Calendar' },
] as const;
