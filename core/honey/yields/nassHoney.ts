/** A year's honey in the United States, operations with 5 or more colonies, as USDA NASS printed it. */
export interface NassHoney {
  readonly year: number;
  /** Thousand producing colonies, pounds a colony, thousand pounds. Colonies that were not harvested are left out. */
  readonly colonies: number;
  readonly perColony: number;
  readonly production: number | null;
  /** True where the page that was read gives the production to the million. */
  readonly rounded?: true;
  readonly source: string;
}

const baking = 'USDA NASS, Honey, as reported by bakingbusiness.com';

/** Only figures that were read; years of which none was read are missing. First prints are revised a year later. */
export const nassHoney: readonly NassHoney[] = [
  { year: 2011, colonies: 2491, perColony: 59.6, production: null, source: 'USDA NASS, as reported by afbl.cn and thepublicopinion.com, 2013' },
  { year: 2012, colonies: 2624, perColony: 56.1, production: 147_000, rounded: true, source: 'USDA NASS, first print, as reported by afbl.cn and thepublicopinion.com, 2013' },
  { year: 2014, colonies: 2740, perColony: 65.1, production: 178_270, source: `${baking}, article 29858` },
  { year: 2015, colonies: 2660, perColony: 58.9, production: 156_544, source: `${baking}, article 29858` },
  { year: 2018, colonies: 2828, perColony: 54.5, production: 154_008, source: `${baking}, article 50622 (revised)` },
  { year: 2019, colonies: 2812, perColony: 55.8, production: 156_922, source: `${baking}, article 50622` },
  { year: 2020, colonies: 2710, perColony: 54.5, production: 148_000, rounded: true, source: 'USDA NASS, as reported by ncocall.com, 2021' },
  { year: 2021, colonies: 2697, perColony: 47, production: 126_744, source: `${baking}, article 58699 (revised)` },
  { year: 2022, colonies: 2667, perColony: 47, production: 125_331, source: `${baking}, article 58699` },
  { year: 2024, colonies: 2600, perColony: 51.7, production: 134_000, rounded: true, source: 'USDA NASS, as reported by pnwag.net' },
];

export function nassOf(year: number): NassHoney | null {
  return nassHoney.find((one) => one.year === year) ?? null;
}
