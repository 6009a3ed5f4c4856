/**
 * How lines tell themselves apart: colour and dash together, so that a print without colour still reads.
 * Colours are the Okabe-Ito ones with at least 3:1 on the paper, set as `--series-n` in charts.css.
 */
export interface SeriesStyle {
  readonly stroke: string;
  readonly text: string;
  /** SVG dash pattern; null is an unbroken line. */
  readonly dash: string | null;
}

const dashes = [null, '6 3', '2 2', '9 3 2 3', '12 4', '4 2 1 2', '3 4', '9 2 2 2 2 2'] as const;

/** The style of the series at a place from 0, which is the whole and keeps its colour to itself; the first 8 differ in their dash alone. */
export function seriesStyle(place: number): SeriesStyle {
  const colour = place === 0 ? 1 : 2 + ((place - 1) % 3);
  return { stroke: `var(--series-${colour})`, text: `var(--series-${colour}-text)`, dash: dashes[place % dashes.length] ?? null };
}
