/**
 * Crop for each colony that was harvested, in the unit of the crop; null when none was. Colonies that were not harvested
 * are left out of the count, as USDA NASS does it, and so the figure is no crop for each colony kept.
 */
export function cropPerColony(crop: number, harvested: number): number | null {
  if (!(crop >= 0) || !Number.isSafeInteger(harvested) || harvested < 0) throw new RangeError(`a crop of ${crop} from ${harvested} colonies`);
  return harvested === 0 ? null : crop / harvested;
}
