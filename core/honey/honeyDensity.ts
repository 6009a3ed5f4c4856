import type { Grams, Millilitres } from '#shared/brands.ts';
import { gramsPerPound, millilitresPerGallon } from '#shared/units.ts';

/**
 * Specific gravity 20/20 of honey by per cent water, 13 to 21: White 1975 as tabulated in Krell 1996, FAO Agricultural
 * Services Bulletin 124 (from memory; within the range of an article on honey density, proquest.com, read).
 */
const gravities: readonly number[] = [1.4457, 1.4404, 1.435, 1.4295, 1.4237, 1.4171, 1.4101, 1.4027, 1.395];
const first = 13;
/** Kilograms in a litre of water at 20 degrees Celsius. */
const waterDensity = 0.99821;

/** Kilograms in a litre of honey at 20 degrees Celsius, between the rows by straight lines; null outside 13 to 21 % water. */
export function honeyDensity(water: number): number | null {
  const at = Math.floor(water - first);
  const [low, high] = [gravities[at], gravities[at + 1]];
  if (low === undefined) return null;
  const part = water - first - at;
  if (part === 0) return low * waterDensity;
  return high === undefined ? null : (low + (high - low) * part) * waterDensity;
}

/** The same in pounds for a US gallon. */
export function poundsPerGallon(water: number): number | null {
  const density = honeyDensity(water);
  return density === null ? null : (density * millilitresPerGallon) / gramsPerPound;
}

/** What a volume of honey weighs; null where the density is not known. */
export function honeyMass(volume: Millilitres, water: number): Grams | null {
  const density = honeyDensity(water);
  return density === null ? null : ((volume * density) as Grams);
}

/** How much room a weight of honey takes; null where the density is not known. */
export function honeyVolume(mass: Grams, water: number): Millilitres | null {
  const density = honeyDensity(water);
  return density === null ? null : ((mass / density) as Millilitres);
}
