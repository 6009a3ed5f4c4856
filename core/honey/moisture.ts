import { refuse, type Answer } from '#shared/faults.ts';

/** What the table of refractive indices spans, in per cent water; beyond it the equation is not claimed to hold. */
export const waterSpan = { least: 13, most: 25 } as const;
/** Half a row of the table: a reading that rounds to its first or last row still counts. */
const halfRow = 0.1;
/** Degrees Celsius within which a reading is corrected to 20; a house choice, for the table says nothing of its reach. */
const warmth = { least: 5, most: 45 } as const;

/*
 * Equation of Wedmore 1955 on Chataway's data (from memory; held against 36 printed rows in tests/reference). Texts for
 * laboratories print the first constant as 1.73190, which is -0.2681 in bar notation, and must not be put in as it stands.
 */
const intercept = -0.2681;
const slope = 0.002243;
/** A degree more makes the reading smaller by this (chemsecret.org/article_details-39; the table of AOAC 969.38). */
const perDegree = 0.00023;

/** Refractive index at 20 degrees Celsius of honey with so many per cent water. */
export function indexOfWater(water: number): number {
  return 1 + 10 ** (intercept - slope * water);
}

/** Per cent water (g in 100 g) of honey with a refractive index at 20 degrees Celsius. Not checked against the span. */
export function waterOfIndex(index: number): number {
  return (intercept - Math.log10(index - 1)) / slope;
}

/** A reading at some warmth as it would stand at 20 degrees Celsius. */
export function indexAt20(reading: number, celsius: number): number {
  return reading + (celsius - 20) * perDegree;
}

/** Per cent water from a refractometer's reading at so many degrees Celsius; what cannot be honey is refused with a sentence. */
export function waterFromReading(reading: number, celsius: number): Answer<number> {
  if (!Number.isFinite(reading) || reading < 1.3 || reading > 1.7) {
    return refuse('bad-input', 'A refractive index of honey lies between 1.47 and 1.51.', { field: 'reading', mend: 'Type the index itself, such as 1.4915, not the per cent scale beside it.' });
  }
  if (!Number.isFinite(celsius) || celsius < warmth.least || celsius > warmth.most) {
    return refuse('bad-input', `A reading is corrected from ${warmth.least} to ${warmth.most} °C.`, { field: 'celsius', mend: 'Let honey and prism come to the warmth of the room, and read again.' });
  }
  const water = waterOfIndex(indexAt20(reading, celsius));
  if (water < waterSpan.least - halfRow || water > waterSpan.most + halfRow) {
    return refuse('bad-input', `That reading lies outside the table, which goes from ${waterSpan.least} to ${waterSpan.most} % water.`, {
      field: 'reading', mend: 'Clean the prism, set the refractometer by its own liquid, and read again.',
    });
  }
  return { ok: true, value: water };
}
