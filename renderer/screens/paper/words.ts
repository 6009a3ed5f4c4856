/** What the review's page for printing and sharing says. */
export const words = {
  print: 'Print',
  back: 'Back to Losses',
  season: 'Season',
  by: 'Curves by',
  byUsual: 'yard, and what has enough colonies',
  files: 'Tables as CSV files',
  fileOf: (title: string, rows: number) => `${title}, ${rows === 1 ? '1 row' : `${rows} rows`}`,
  allFiles: 'Save all tables',
  html: 'Save as one HTML file',
  saved: (name: string) => `Saved: ${name}.`,
  savedAll: (count: number) => `Saved: ${count} tables.`,
  line: (book: string, day: string) => `${book}, as of ${day}`,
  empty: 'Nothing is in the book yet that a review could count.',
  page: 'Season review',
  noSeason: (asked: string) => `This book has no season “${asked}” to review.`,
  loading: 'The review is being counted…',
} as const;
