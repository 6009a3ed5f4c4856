import { describe, expect, test } from 'vitest';
import { expectedEnd, faultsInCounts, usLoss, usLossCombinedAsRemoval, type UnitCounts } from '#core/losses/lossDefinitions.ts';
import { colossLossRate, lossRate, lossRates } from '#core/losses/lossRate.ts';

const nothing = { splits: 0, purchased: 0, swarms: 0, sold: 0, given: 0, combined: 0, dead: 0, queen: 0, disaster: 0 };
const percent = (rate: number | null): string => (rate === null ? '' : (100 * rate).toFixed(1));

describe('COLOSS winter losses', () => {
  // COLOSS surveys, as published: winter 2016/17, Brodschneider et al. 2018, Multi-country loss rates of honey
  // bee colonies during winter 2016/2017, J Apic Res; winter 2017/18, Gray et al. 2019, J Apic Res; winter
  // 2018/19, Gray et al. 2020, J Apic Res 59(5):744-751. Counts and rates read in the universities' own
  // records of these papers.
  test.each([
    ['2016/17', 425_762, { queen: 21_887, dead: 60_227, disaster: 6_903 }, 89_017, '20.9'],
    ['2017/18', 544_879, { queen: 26_379, dead: 54_525, disaster: 8_220 }, 89_124, '16.4'],
    ['2018/19', 738_233, { queen: 29_912, dead: 79_146, disaster: 13_895 }, 122_953, '16.7'],
  ])('winter %s', (winter, wintered, parts, lost, rate) => {
    const unit: UnitCounts = { ...nothing, unit: winter, start: wintered, ...parts, end: wintered - lost };
    expect(faultsInCounts(unit)).toEqual([]);
    const coloss = colossLossRate([unit]);
    expect(coloss.totalLost).toBe(lost);
    expect(percent(coloss.total.rate)).toBe(rate);
  });

  test('2018/19 by cause: dead 10.7, queen problems 4.1, disaster 1.9', () => {
    const parts = { queen: 29_912, dead: 79_146, disaster: 13_895 };
    const rates = colossLossRate([{ ...nothing, unit: 'all', start: 738_233, ...parts, end: 615_280 }]);
    expect([rates.deadRate, rates.queenRate, rates.disasterRate].map(percent)).toEqual(['10.7', '4.1', '1.9']);
  });
});

describe('US survey rule', () => {
  // The formula: vanEngelsdorp et al. 2013 (doi 10.3896/IBRA.1.52.4.15), from memory, consistent with the words
  // of Spleen et al. 2013, J Apic Res 52(2):44-53. United colonies count as lost: the survey's authors, 2020.
  const winter: UnitCounts = { ...nothing, unit: 'yard', start: 100, splits: 12, purchased: 8, sold: 5, dead: 30, end: 85 };

  test('100 on 1 October, 20 split or bought, 5 sold, 85 on 1 April: 30 of 115, 26.1 %', () => {
    expect(faultsInCounts(winter)).toEqual([]);
    expect(usLoss(winter)).toEqual({ atRisk: 115, lost: 30 });
    expect(percent(lossRates([winter]).us.total.rate)).toBe('26.1');
  });

  test('3 of the 30 united into others: still 30 lost, or taken out 27 of 112', () => {
    const united = { ...winter, combined: 3, dead: 27 };
    expect(usLoss(united)).toEqual({ atRisk: 115, lost: 30 });
    expect(usLossCombinedAsRemoval(united)).toEqual({ atRisk: 112, lost: 27 });
  });

  test('total follows the large operation, average the many small ones: 10.4 % and 30.0 %', () => {
    const rates = lossRate([{ atRisk: 10, lost: 5 }, { atRisk: 1000, lost: 100 }]);
    expect([rates.totalLost, rates.totalAtRisk]).toEqual([105, 1010]);
    expect(percent(rates.total.rate)).toBe('10.4');
    expect(percent(rates.average.mean)).toBe('30.0');
  });

  // Same chapter: seasons are not added up; the year has its own colonies at risk.
  test('a year: 1000 in April, 600 splits, 1000 next April is 37.5 %', () => {
    const year: UnitCounts = { ...nothing, unit: 'year', start: 1000, splits: 600, dead: 600, end: 1000 };
    expect(percent(lossRates([year]).us.total.rate)).toBe('37.5');
  });
});

// USDA NASS, Honey Bee Colonies, release of 2 August 2021, US rows. Sales and uniting are not in the table, so
// the printed rows need not balance, and must not be made to.
describe('rolling the US quarters of 2020 forward', () => {
  test.each([
    ['January to March', 2_876_100, 415_110, 511_160, 2_972_150, 2_972_000],
    ['April to June', 2_972_000, 300_990, 536_170, 3_207_180, 3_175_330],
  ])('%s', (quarter, firstDay, lost, added, rolled, printed) => {
    const unit: UnitCounts = { ...nothing, unit: quarter, start: firstDay, purchased: added, dead: lost, end: printed };
    expect(expectedEnd(unit)).toBe(rolled);
    expect(faultsInCounts(unit)).toHaveLength(1);
  });
});

// Worked example for the quasi-binomial rule of vanEngelsdorp et al. 2013 (doi 10.3896/IBRA.1.52.4.15); the
// numbers by R 4.2.2, glm(cbind(lost, atRisk - lost) ~ 1, family = quasibinomial).
test('five yards: quasi-binomial and average loss', () => {
  const atRisk = [15, 27, 9, 44, 7];
  const lost = [5, 5, 5, 10, 1];
  const rates = lossRate(atRisk.map((colonies, at) => ({ atRisk: colonies, lost: lost[at] ?? Number.NaN })));
  const { quasi, average, total } = rates;
  if (!quasi.defined) throw new Error(quasi.reason);
  const places = (value: number | null | undefined, digits: number): string => (value ?? Number.NaN).toFixed(digits);
  expect(places(total.rate, 7)).toBe('0.2549020');
  expect(places(quasi.intercept, 7)).toBe('-1.0726368');
  expect(places(quasi.dispersion, 7)).toBe('1.5249334');
  expect(places(quasi.se, 7)).toBe('0.2805641');
  expect(quasi.df).toBe(4);
  expect([quasi.ciT.lower, quasi.ciT.upper].map((limit) => limit.toFixed(7))).toEqual(['0.1356843', '0.4271066']);
  expect([quasi.ciZ.lower, quasi.ciZ.upper].map((limit) => limit.toFixed(7))).toEqual(['0.1648559', '0.3722114']);
  expect([places(total.wilson?.lower, 7), places(total.wilson?.upper, 7)]).toEqual(['0.1802966', '0.3472987']);
  expect([places(average.mean, 7), places(average.sd, 7)]).toEqual(['0.2888408', '0.1650475']);
  expect([places(average.ciT?.lower, 4), places(average.ciT?.upper, 4)]).toEqual(['0.0839', '0.4938']);
});
