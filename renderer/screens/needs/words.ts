/** What the list of needs says. */
export const words = {
  title: 'What needs doing',
  line: 'Which colonies and yards need something, by when, and why; the most urgent first.',
} as const;
