import type { LossRates } from '#shared/contract/lossSections.ts';

export type PublishedRate = LossRates['published'][number];

const usWinter2012 = 'Spleen and others 2013, J Apic Res 52(2):44–53 (studylib.net/doc/13823285)';
const us2013 = 'Steinhauer and others 2014, J Apic Res (fdocuments.in, A national survey of managed honey bee 2012–2013)';
const us2014 = 'Lee and others 2015, Apidologie (1library.net/document/ydom82gz)';
const usReports = 'Reports of the US national survey (losangelescountybeekeepers.com)';
const us2020 = 'University of Maryland, 22 June 2020 (agnr.umd.edu)';
const coloss2017 = 'COLOSS, winter 2016/17 (pureportal.strath.ac.uk, Multi-country loss rates)';
const coloss2018 = 'COLOSS, winter 2017/18 (afbi.dspacedirect.org/items/e8cc2026)';
const coloss2019 = 'Gray and others 2020, J Apic Res 59(5):744–751 (strathprints.strath.ac.uk/73606)';
const austria = 'Oberreiter and Brodschneider 2020, Diversity 12:99';

const us = (season: number, period: PublishedRate['period'], percent: number, source: string, what: PublishedRate['what'] = 'total'): PublishedRate => ({
  survey: 'us', place: 'United States', season, period, what, rate: percent / 100, range: null, rangeIs: null, source,
});

/**
 * Colonies wintered in a winter of the COLOSS survey, and the three parts of those lost; for checking the
 * rates printed beside them.
 */
export const colossCounts = [
  { season: 2016, wintered: 425_762, queen: 21_887, dead: 60_227, disaster: 6903, source: coloss2017 },
  { season: 2017, wintered: 544_879, queen: 26_379, dead: 54_525, disaster: 8220, source: coloss2018 },
  { season: 2018, wintered: 738_233, queen: 29_912, dead: 79_146, disaster: 13_895, source: coloss2019 },
] as const;

const coloss = (season: number, percent: number, range: [number, number] | null, rangeIs: PublishedRate['rangeIs'], source: string): PublishedRate => ({
  survey: 'coloss', place: 'Europe and partners', season, period: 'winter', what: 'total', rate: percent / 100, range: range === null ? null : [range[0] / 100, range[1] / 100], rangeIs, source,
});

/**
 * Loss rates as surveys printed them, each read in the source named with it. A season is named by the year it
 * begins in: the winter 2018/19 is that of season 2018. Figures that could not be read anywhere are left out,
 * so rows are missing.
 */
export const publishedSurveys: readonly PublishedRate[] = [
  us(2023, 'year', 55.1, 'Preliminary report of the US national survey (threadsky.app)'),
  us(2022, 'winter', 37.4, 'American Bee Journal, 1 August 2023'),
  us(2022, 'year', 48.2, 'US national survey 2022/23, quoted (nzbees.net, thread 1050)'),
  us(2020, 'year', 45.5, 'US national survey 2020/21, quoted (pennlive.com, 13 July 2021)'),
  us(2019, 'winter', 22.2, us2020),
  us(2019, 'summer', 32.0, us2020),
  us(2019, 'year', 43.7, us2020),
  us(2018, 'winter', 37.7, usReports),
  us(2017, 'winter', 30.7, usReports),
  us(2016, 'year', 33.2, usReports),
  us(2013, 'winter', 23.7, us2014),
  us(2013, 'summer', 19.8, us2014),
  us(2013, 'year', 34.1, us2014),
  us(2013, 'winter', 44.8, us2014, 'average'),
  us(2013, 'summer', 15.1, us2014, 'average'),
  us(2013, 'year', 51.1, us2014, 'average'),
  us(2012, 'winter', 30.6, us2013),
  us(2012, 'summer', 25.3, us2013),
  us(2012, 'year', 45.2, us2013),
  us(2012, 'winter', 44.8, us2013, 'average'),
  us(2012, 'summer', 12.5, us2013, 'average'),
  us(2012, 'year', 49.4, us2013, 'average'),
  us(2011, 'winter', 22.5, usWinter2012),
  coloss(2018, 16.7, [5.8, 32.0], 'countries', coloss2019),
  coloss(2017, 16.4, null, null, coloss2018),
  coloss(2016, 20.9, null, null, coloss2017),
  { survey: 'other', place: 'Austria', season: 2018, period: 'winter', what: 'total', rate: 0.152, range: [0.144, 0.161], rangeIs: 'interval', source: austria },
];
