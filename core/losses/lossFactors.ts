import type { LossFactors, RiskFactor } from '#shared/contract/lossFactors.ts';
import type { ColonyId } from '#shared/brands.ts';
import { addDays, type Day } from '#shared/days.ts';
import { periodDays, seasonName, seasonOf, type Season } from '#shared/seasons.ts';
import { whole, type Slices } from '#shared/slices.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { currentYard } from '#core/journal/colonyState.ts';
import { factorsOf, type Factor } from './factors.ts';
import { classesOf, classOf, lossCauses, unknownCause, type LostColony } from './lossCauses.ts';
import { capital } from './lossNumbers.ts';
import { lossSay } from './lossSay.ts';
import { movedInWinters } from './movedInWinters.ts';
import { riskTable } from './riskTable.ts';
import { togetherRisk } from './togetherRisk.ts';
import { winterRows, wintersKnown, type WinterFacts, type WinterRow } from './winterRows.ts';
import { yardPooling } from './yardPooling.ts';

export interface FactorFacts extends WinterFacts {
  readonly yardList: readonly { readonly code: string; readonly name: string }[];
  readonly kept: RuleValues;
  /** The rows of one winter, where they are worked out already. */
  readonly rowsOf?: (season: Season) => readonly WinterRow[];
}

export interface Chosen {
  readonly season: Season;
  readonly scope: 'season' | 'all';
  readonly rows: readonly WinterRow[];
  readonly winters: readonly Season[];
  readonly lastRecord: Day | null;
}

/** The winters asked for, with their colonies. A season alone may still run; of all seasons only those that are over. */
export function chosenRows(facts: FactorFacts, asked: Season | undefined, scope: 'season' | 'all', seasons: readonly Season[]): Chosen {
  const { borders, asOf } = facts;
  const lastRecord = lastRecordOf(facts);
  const begun = seasons.filter((season) => periodDays(season, 'winter', borders).from <= (lastRecord ?? asOf));
  const season = asked !== undefined && seasons.includes(asked) ? asked : (begun.at(-1) ?? seasons.at(-1) ?? Number(asOf.slice(0, 4)));
  const winters = scope === 'all' ? wintersOf(facts, seasons) : begun.includes(season) ? [season] : [];
  return { season, scope, winters, lastRecord, rows: winters.flatMap((one) => facts.rowsOf?.(one) ?? winterRows(facts, one)) };
}

/** The winters of all seasons whose fates are known. */
export function wintersOf(facts: FactorFacts, seasons: readonly Season[]): Season[] {
  return wintersKnown(seasons, lastRecordOf(facts), facts.asOf, facts.today, facts.borders);
}

function lastRecordOf({ states }: FactorFacts): Day | null {
  return states.reduce<Day | null>((last, state) => (last === null || state.lastDay > last ? state.lastDay : last), null);
}

export function factorsFor({ kept, yardList }: FactorFacts): Factor[] {
  return factorsOf(
    { mitesThreshold: numberRule(kept, 'losses.mites.threshold'), storesPounds: numberRule(kept, 'losses.stores.pounds'), strengthFrames: numberRule(kept, 'losses.strength.frames') },
    (code) => yardList.find((yard) => yard.code === code)?.name ?? code,
  );
}

/** What went with losses, the causes as recorded, and what the numbers can say, for one winter or all that are over. */
export function lossFactors(facts: FactorFacts, chosen: Chosen): LossFactors {
  return whole(lossFactorsInSlices(facts, chosen));
}

/** The same, part by part. */
export function* lossFactorsInSlices(facts: FactorFacts, chosen: Chosen): Slices<LossFactors> {
  const { kept, borders, asOf, today, yardList } = facts;
  const { season, scope, rows, winters, lastRecord } = chosen;
  const rules = { fewestLosses: numberRule(kept, 'losses.test.fewest'), few: numberRule(kept, 'losses.few') };
  const factors = riskTable(rows, factorsFor(facts), rules);
  yield;
  const tests = factors.flatMap(({ groups }) => groups).filter(({ p }) => p !== null).length;
  const end = periodDays(winters.at(-1) ?? season, 'winter', borders).until;
  const complete = today >= end || addDays(asOf, 1) >= end;
  const nameOf = (code: string) => yardList.find((yard) => yard.code === code)?.name ?? code;
  const yards = yardPooling(rows, nameOf, rules.few);
  yield;
  const together = togetherRisk(rows, { perCoefficient: numberRule(kept, 'losses.cox.perCoefficient'), few: rules.few });
  yield;
  const moved = movedInWinters(facts, winters);
  yield;
  return {
    season, scope, complete, tests, factors,
    winters: winters.map((one) => {
      const own = rows.filter((row) => row.season === one && row.fate !== 'left');
      return { season: one, name: seasonName(one), atRisk: own.length, lost: own.filter(({ fate }) => fate === 'lost').length };
    }),
    leftOut: rows.filter(({ fate }) => fate === 'left').length,
    sentences: headline(rows, factors, tests, rules.fewestLosses),
    yards, together, moved,
    causes: lossCauses(lostIn(facts, winters), yardList, rules.fewestLosses, { winters: winters.length, elsewhere: lostElsewhere(facts, chosen) }),
    say: lossSay({ rows, winters: winters.length, tests, fewestLosses: rules.fewestLosses, few: rules.few, complete, asOf, lastRecord, until: complete ? end : addDays(asOf, 1) }),
  };
}

/** A colony behind a figure, in the winter (or the season) that the figure counts it in. */
export interface Behind {
  readonly id: ColonyId;
  readonly yard: string;
  readonly season: Season;
  readonly lost: boolean;
}

/** The colonies behind a figure; null if colonies are not grouped by `key`. */
export function behindFactor(facts: FactorFacts, chosen: Chosen, key: string, group: string | null, yard: string | undefined): { name: string; colonies: Behind[] } | null {
  if (key === 'cause' || key === 'causeByYard') {
    const is = (colony: LostColony) => (key === 'cause' ? group !== null && classesOf(colony).includes(group) : classOf(colony) === group);
    const own = lostIn(facts, chosen.winters).filter((colony) => is(colony) && (yard === undefined || colony.yard === yard));
    return {
      name: capital(group ?? unknownCause),
      colonies: own.map((colony) => ({ id: colony.id, yard: colony.yard, season: seasonOf(facts.byId.get(colony.id)?.end ?? facts.asOf, facts.borders), lost: true })),
    };
  }
  const factor = factorsFor(facts).find((one) => one.key === key);
  if (factor === undefined) return null;
  const own = chosen.rows.filter((row) => row.fate !== 'left' && factor.groupOf(row) === group && (yard === undefined || row.yard === yard));
  return {
    name: `${factor.name}, ${group === null ? factor.without : factor.nameOf(group)}`,
    colonies: own.map((row) => ({ id: row.colony.id, yard: row.yard, season: row.season, lost: row.fate === 'lost' })),
  };
}

/** Colonies lost in these winters, each in the yard where it stood last; those that came during the winter too. */
export function lostIn({ states, borders, asOf, codeOf }: FactorFacts, winters: readonly Season[]): LostColony[] {
  const stretches = winters.map((season) => periodDays(season, 'winter', borders));
  return states.flatMap((state) => {
    const { end, how } = state;
    if (end === null || end > asOf || (how !== 'lost' && how !== 'absconded')) return [];
    if (!stretches.some(({ from, until }) => end >= from && end < until)) return [];
    return [{ id: state.id, yard: codeOf(currentYard(state)), how, causes: state.causes }];
  });
}

/** Lost in the season (or ever), but not in the winters that are looked at. */
function lostElsewhere(facts: FactorFacts, { season, scope, winters }: Chosen): number {
  const year = periodDays(season, 'year', facts.borders);
  const lost = facts.states.filter(({ how, end }) => (how === 'lost' || how === 'absconded') && end !== null && end <= facts.asOf && (scope === 'all' || (end >= year.from && end < year.until)));
  return lost.length - lostIn(facts, winters).length;
}

const most = 4;

/** What stands out of the table once every comparison is allowed for. */
function headline(rows: readonly WinterRow[], factors: readonly RiskFactor[], tests: number, fewest: number): string[] {
  const counted = rows.filter(({ fate }) => fate !== 'left');
  const lost = counted.filter(({ fate }) => fate === 'lost').length;
  if (rows.length === 0) return ['Nothing about a colony is on record for this winter, so there is nothing to compare.'];
  if (counted.length === 0) return ['Every colony was sold, given away or united during the winter; there is nothing to compare.'];
  if (lost === 0) return ['Nothing was lost, so there is nothing to compare.'];
  if (lost === counted.length) return ['Everything was lost, whatever the group, so there is nothing to compare.'];
  if (lost < fewest) return [`Too few to tell what went with losses: ${lost} lost of ${counted.length}. The counts stand below.`];
  if (tests === 0) return ['Too few to tell: in no group are there enough colonies on both sides to compare. The counts stand below.'];
  const found = factors.flatMap((factor) => factor.groups.flatMap((group) => ((group.pHolm ?? 1) < 0.05 ? [{ factor, group }] : []))).toSorted((a, b) => (a.group.pHolm ?? 1) - (b.group.pHolm ?? 1));
  const comparisons = tests === 1 ? 'the one comparison that can be made' : `${tests} comparisons`;
  if (found.length === 0) return [`Nothing stands out: with ${comparisons} made, no group lost more or fewer than chance would have it.`];
  const said = found.slice(0, most).map(({ factor, group }) => `${capital(factor.name)}, ${group.name}: ${group.lost} of ${group.atRisk} lost, against ${group.restLost} of ${group.restAtRisk} of the others; ${group.differenceWords ?? ''}.`);
  const more = found.length > most ? [`${found.length - most} more ${found.length - most === 1 ? 'stands' : 'stand'} out in the table.`] : [];
  return [`More than chance would have it, allowing for ${comparisons}:`, ...said, ...more];
}
