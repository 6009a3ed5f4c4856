export const markColours = ['blue', 'white', 'yellow', 'red', 'green'] as const;
export type MarkColour = (typeof markColours)[number];

/**
 * The marking colour of a queen that hatched in that year, by the international code: white for years that end
 * in 1 and 6, yellow 2 and 7, red 3 and 8, green 4 and 9, blue 5 and 0. Common practice of the trade.
 */
export function queenColour(year: number): MarkColour {
  return markColours[year % 5] ?? 'blue';
}
