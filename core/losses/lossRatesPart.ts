import type { LossRates } from '#shared/contract/lossSections.ts';
import type { LossRow } from '#shared/contract/losses.ts';
import type { United } from '#shared/contract/values.ts';
import { periodDays, type Period, type Season } from '#shared/seasons.ts';
import { riskDifference } from '#core/stats/riskDifference.ts';
import { cohortLoss, winterBase } from './cohortLoss.ts';
import { stale } from './lossReview.ts';
import { lossRows, wholeLossRow } from './lossRows.ts';
import { lossSentences } from './lossWords.ts';
import { movedInWinters } from './movedInWinters.ts';
import { publishedSurveys } from './publishedSurveys.ts';
import { isOver, type ReviewFacts } from './reviewFacts.ts';
import { reviewFrame } from './reviewFrame.ts';
import type { SeasonYard } from './seasonLedger.ts';

const periods = ['winter', 'summer', 'year'] as const;

/** Every season's rates by both published definitions. `counted`: the account of a season's yards; `cohort`: what became of its wintered colonies. */
export function lossRatesPart(facts: ReviewFacts, season: Season, united: United, counted: (season: Season) => readonly SeasonYard[], cohort = (one: Season) => cohortLoss(facts, one)): LossRates {
  const { yards, borders, asOf, today } = facts;
  const { seasons, lastRecord, silence } = reviewFrame(facts, season);
  // Yards are looked at in the season itself alone; in a large operation their rows for every season would be thousands.
  // Where nothing was written down any more, none lost would be a guess.
  const told = (one: Season, period: Period) => (one === season && silence === null) || (lastRecord !== null && lastRecord >= periodDays(one, period, borders).from);
  const rates = seasons.flatMap((one) =>
    periods.filter((period) => told(one, period)).flatMap((period) => {
      if (one === season) return lossRows(one, period, counted(one), united, asOf, today, borders);
      const whole = wholeLossRow(one, period, counted(one), united, asOf, today, borders);
      return whole === null ? [] : [whole];
    }),
  );
  const nameOf = (code: string) => yards.find((yard) => yard.code === code)?.name ?? code;
  return {
    season, united,
    yards: yards.map(({ code, name }) => ({ code, name })),
    rates,
    cohorts: seasons.toReversed().filter((one) => told(one, 'winter')).flatMap((one) => {
      const loss = cohort(one);
      return loss === null ? [] : [{ season: one, complete: isOver(periodDays(one, 'winter', borders).until, facts), loss }];
    }),
    sentences: lastRecord === null ? [] : silence !== null ? [silence] : [...lossSentences(season, rates, nameOf, winterBase(facts, season)), ...stale(lastRecord, season, facts)],
    moved: movedInWinters(facts, [season]),
    differences: periods.flatMap((period) => differences(rates, season, period)),
    published: [...publishedSurveys],
  };
}

/** This season's rate less each earlier one, where both periods are over and something was at risk. */
function differences(rates: readonly LossRow[], season: Season, period: Period): LossRates['differences'] {
  const all = rates.filter((row) => row.period === period && row.group === 'all' && row.complete && row.atRisk > 0);
  const own = all.find((row) => row.season === season);
  if (own === undefined) return [];
  return all.flatMap((row) => {
    if (row.season >= season) return [];
    const found = riskDifference({ a: own.lost, b: own.atRisk - own.lost, c: row.lost, d: row.atRisk - row.lost });
    return found === null ? [] : [{ season: row.season, period, value: found.value, range: [found.newcombe.lower, found.newcombe.upper] as [number, number] }];
  });
}
