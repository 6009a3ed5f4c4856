/** What the season strip on a colony's page says. */
export const seasonWords = {
  heading: 'A season at a glance',
  season: 'Season',
  figure: (season: string) => `Season ${season}`,
  nothing: 'Nothing was written down in this season.',
  margin: 'The season strip',
  marginText:
    'A line joins the looks that were written down; between them nothing is known. A mite count is a dot with its 95 % range (Clopper-Pearson); an arrow head at its top says that the range reaches beyond the axis. The dotted line is the first day of winter; shaded days are before the colony began, after it ended, or still to come. Point at a mark to read it.',
} as const;
