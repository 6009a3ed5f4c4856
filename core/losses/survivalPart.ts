import type { ColonyId } from '#shared/brands.ts';
import type { LossSurvival, SurvivalGroup, SurvivalTest } from '#shared/contract/lossSections.ts';
import { addDays, dayInWords, daysBetween, monthDayInWords, type Day } from '#shared/days.ts';
import { periodDays, seasonName, type Season } from '#shared/seasons.ts';
import type { MassUnit } from '#shared/units.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { logRank, logRankPairs, logRankPairsStratified, logRankStratified, type LogRankPair } from '#core/stats/logRank.ts';
import { stale } from './lossReview.ts';
import { ageCurveSentence } from './lossWords.ts';
import { isOver, type ReviewFacts } from './reviewFacts.ts';
import { reviewFrame } from './reviewFrame.ts';
import { movedInWinters } from './movedInWinters.ts';
import { fitGroup, incidenceOf, meanTo, sharedTau, shownGroup, spansOf, type Axis, type Fitted } from './survivalFit.ts';
import { groupRows, type GroupRows } from './survivalGroups.ts';
import { groupCounts, groupingNoun, madeSentence, pText, winterSentence } from './survivalWords.ts';
import { lifeGroupings, lifeRows, winterRows, winterSpans, type FateCode, type WatchedRow, type WinterSpan } from './watchedRows.ts';
import { covariateRules, type WinterColony } from './winterCovariates.ts';

export interface SurvivalFacts extends ReviewFacts {
  readonly stateOf: (id: ColonyId) => ColonyState;
  /** What each colony went into a winter with. */
  readonly covariates: (season: Season) => readonly WinterColony[];
  /** Each colony's time in a winter, where it is worked out already. */
  readonly spans?: (season: Season) => readonly WinterSpan[];
  readonly rules: RuleValues;
  readonly massUnit: MassUnit;
}

type Asked = LossSurvival['asked'];

/** The rows behind what was asked, all together and by group; groups are empty where the grouping has no meaning. */
export function watched(facts: SurvivalFacts, asked: Asked): { readonly seasons: readonly Season[]; readonly rows: readonly WatchedRow[]; readonly groups: readonly GroupRows[] } {
  const names = { yards: facts.yards, rules: covariateRules(facts.rules), massUnit: facts.massUnit };
  if (asked.axis === 'start') {
    const by = lifeGroupings.includes(asked.by) ? asked.by : 'none';
    // In a yard a colony is watched in pieces, so the whole is made of whole lives.
    return { seasons: [], rows: lifeRows(facts, 'none'), groups: by === 'none' ? [] : groupRows(lifeRows(facts, by), by, names) };
  }
  const frame = reviewFrame(facts, asked.season ?? undefined);
  const begun = frame.seasons.filter((season) => periodDays(season, 'winter', facts.borders).from <= (frame.lastRecord ?? facts.asOf));
  const seasons = asked.season === null ? begun : [asked.season];
  const rows = seasons.flatMap((season) => winterRows(facts, season, facts.spans?.(season) ?? winterSpans(facts, season, facts.covariates(season), facts.stateOf), asked.by));
  return { seasons, rows, groups: groupRows(rows, asked.by, names) };
}

export function lostFates(asked: Asked): ReadonlySet<FateCode> {
  return new Set<FateCode>(asked.united === 'lost' ? [1, 3] : [1]);
}

/** When colonies died: curves by group, their test, and what else took colonies out of the count. */
export function survivalPart(facts: SurvivalFacts, asked: Asked): LossSurvival {
  const { borders, rules } = facts;
  const { seasons, rows, groups } = watched(facts, asked);
  const life = asked.axis === 'start';
  const only = life ? null : asked.season;
  const winter = only === null ? null : periodDays(only, 'winter', borders);
  const last = life ? rows.reduce((latest, row) => Math.max(latest, row.exit), 365) : winterDays(seasons, facts);
  const axis: Axis = { last, step: life ? Math.ceil(last / 6 / 30) * 30 : last / 6, fewest: numberRule(rules, 'losses.curve.atRisk'), lost: lostFates(asked), life };
  // A group of which every colony went on into another (the ones weighed later) holds no colony of its own.
  const fitted = groups.map((group) => fitGroup(group, axis)).filter(({ colonies }) => colonies > 0);
  const compared = comparable(fitted, facts, asked).groups;
  const whole = fitGroup({ key: 'all', label: 'All together', rows: onlyWhole(rows) }, axis);
  const tau = sharedTau([whole, ...fitted], last);
  const means = fitted.map((one) => (tau === null || one.fit === null ? null : meanTo(one, tau)));
  const reference = largest(fitted, compared);
  const all = shownGroup(whole, 0, axis, tau === null || whole.fit === null ? null : meanTo(whole, tau), null);
  const shown = fitted.map((one, at) => shownGroup(one, at + 1, axis, means[at] ?? null, reference < 0 || !compared.includes(one) ? null : (means[reference] ?? null)));
  const complete = winter === null || isOver(winter.until, facts);
  const test = asked.by === 'none' || groups.length === 0 ? null : testOf(fitted, facts, asked);
  const silence = only === null ? null : reviewFrame(facts, only).silence;
  return {
    asked, origin: winter?.from ?? null, last, complete, all: silence === null ? all : { ...all, curve: null, why: silence, mean: null, median: null }, groups: silence === null ? shown : [], tau,
    reference: reference < 0 ? null : (fitted[reference]?.group.key ?? null),
    test: silence === null ? test : null,
    pairs: test?.kind === 'made' && test.groups.length > 2 && test.groups.length <= numberRule(rules, 'losses.pairs') ? test.groups.length : 0,
    sentence: silence ?? sentenceOf(facts, asked, all, rows, seasons, complete),
    notes: silence === null ? [...notesOf(facts, asked, all, shown, seasons), ...aside(fitted, compared, facts, asked)] : [],
    incidence: life || silence !== null ? null : incidenceOf(onlyWhole(rows), complete ? 'by the end' : 'so far'),
  };
}

/** The rows of whole colonies: the pieces of one that changed its group in between are put together again. */
function onlyWhole(rows: readonly WatchedRow[]): readonly WatchedRow[] {
  const pieces = rows.filter((row) => !row.last);
  if (pieces.length === 0) return rows;
  const first = new Map(pieces.map((row) => [`${row.id} ${row.season}`, row.entry]));
  return rows.filter((row) => row.last).map((row) => ({ ...row, entry: Math.min(row.entry, first.get(`${row.id} ${row.season}`) ?? row.entry) }));
}

function winterDays(seasons: readonly Season[], { borders }: ReviewFacts): number {
  return seasons.reduce((most, season) => {
    const { from, until } = periodDays(season, 'winter', borders);
    return Math.max(most, daysBetween(from, until));
  }, 1);
}

/** The group with the most colonies among those that are compared, or -1. */
function largest(fitted: readonly Fitted[], compared: readonly Fitted[]): number {
  return fitted.reduce((best, one, at) => (compared.includes(one) && (best < 0 || one.colonies > (fitted[best]?.colonies ?? 0)) ? at : best), -1);
}

/** The group of those that do not have on record what colonies are grouped by. */
const notOnRecord: Partial<Readonly<Record<Asked['by'], string>>> = { queenAge: 'unknown', line: '', mites: 'not counted', stores: 'not weighed' };

/**
 * What is compared: groups with a curve, with as many colonies as a comparison in the table of risks begins with
 * (the log-rank test is one of large numbers), and not those of which the thing is not on record.
 */
function comparable(fitted: readonly Fitted[], { rules }: SurvivalFacts, { by }: Asked): { rows: WatchedRow[]; groups: readonly Fitted[] } {
  const few = numberRule(rules, 'losses.few');
  const groups = fitted.filter(({ fit, colonies, group }) => fit !== null && colonies >= few && group.key !== notOnRecord[by]);
  return { rows: groups.flatMap(({ group }) => group.rows), groups };
}

/** Which curves are drawn but in no comparison, and why. */
function aside(fitted: readonly Fitted[], compared: readonly Fitted[], { rules }: SurvivalFacts, { by }: Asked): string[] {
  const drawn = fitted.filter((one) => one.fit !== null && !compared.includes(one));
  if (drawn.length === 0 || fitted.length < 2) return [];
  const why = ({ group, colonies }: Fitted) => (group.key === notOnRecord[by] ? `${group.label} (not on record)` : `${group.label} (${colonies}; comparing begins at ${numberRule(rules, 'losses.few')})`);
  return [`Drawn but not compared: ${drawn.map(why).join(', ')}.`];
}

function testOf(fitted: readonly Fitted[], facts: SurvivalFacts, asked: Asked): SurvivalTest {
  const refused = (sentence: string): SurvivalTest => ({ kind: 'refused', sentence });
  const fewest = numberRule(facts.rules, 'losses.test.fewest');
  const { rows, groups } = comparable(fitted, facts, asked);
  const losses = groups.reduce((sum, one) => sum + one.losses, 0);
  if (fitted.length === 1) return refused('There is one group only, so nothing is compared.');
  if (groups.length < 2) return refused(`${groups.length === 0 ? 'No group is' : 'Only one group is'} large enough to be compared, so nothing is; the counts stand alone.`);
  if (losses === 0) return refused('Nothing was lost in these groups, so there is nothing to compare.');
  if (losses < fewest) return refused(`${losses === 1 ? 'One loss is' : `${losses} losses are`} too few for a test; the counts stand alone.`);
  const spans = spansOf(rows, lostFates(asked));
  const keys = groups.flatMap(({ group }) => group.rows.map(() => group.key));
  const stratified = asked.axis === 'winter' && asked.season === null;
  const strata = stratified ? new Set(rows.map((row) => row.season)).size : 1;
  const found = stratified ? logRankStratified(spans, keys, rows.map((row) => row.season)) : logRank(spans, keys);
  if (found.chiSquare === null || found.p === null) return refused('The groups were not watched at the same time, so they cannot be compared.');
  return { kind: 'made', chiSquare: found.chiSquare, df: found.df, p: found.p, strata, groups: groups.map(({ group }) => group.key), sentence: madeSentence(found.p, strata) };
}

/** Each pair of groups by itself, where the groups are few enough and the test of all may be made. */
export function survivalPairs(facts: SurvivalFacts, asked: Asked, part: LossSurvival = survivalPart(facts, asked)): { pairs: LogRankPair[]; sentence: string } {
  if (part.pairs === 0) return { pairs: [], sentence: part.test?.kind === 'refused' ? part.test.sentence : 'There are too many groups, or too few, to compare them pair by pair.' };
  const { groups } = watched(facts, asked);
  const compared = part.test?.kind === 'made' ? part.test.groups : [];
  const own = groups.filter(({ key }) => compared.includes(key));
  const rows = own.flatMap((group) => group.rows);
  const keys = own.flatMap((group) => group.rows.map(() => group.label));
  const spans = spansOf(rows, lostFates(asked));
  const pairs = asked.axis === 'winter' && asked.season === null ? logRankPairsStratified(spans, keys, rows.map((row) => row.season)) : logRankPairs(spans, keys);
  const made = pairs.filter(({ p }) => p !== null).length;
  const apart = made === pairs.length ? '' : ` ${pairs.length - made} could not be compared: never watched together while some were lost.`;
  const clear = pairs.filter(({ pHolm }) => pHolm !== null && pHolm < 0.05);
  const sentence = clear.length === 0
    ? `No pair differs by more than chance makes likely, allowing for ${made} ${made === 1 ? 'pair' : 'pairs'}.${apart}`
    : `Allowing for ${made} pairs, more than chance makes likely: ${clear.map(({ a, b, pHolm }) => `${a} against ${b} (p ${pText(pHolm ?? 1)})`).join('; ')}.${apart}`;
  return { pairs: [...pairs], sentence };
}

function sentenceOf(facts: SurvivalFacts, asked: Asked, all: SurvivalGroup, rows: readonly WatchedRow[], seasons: readonly Season[], complete: boolean): string {
  if (asked.axis === 'start') {
    if (all.curve === null) return all.colonies === 0 ? 'No colony was watched.' : `${all.losses} of ${all.colonies} ${all.colonies === 1 ? 'colony' : 'colonies'} watched ${all.losses === 1 ? 'was' : 'were'} lost; too few were watched for a curve.`;
    return ageCurveSentence(all.curve, (time) => rows.filter((row) => row.entry < time && row.exit >= time).length);
  }
  const few = numberRule(facts.rules, 'losses.few');
  const [season] = seasons;
  const from = asked.season === null || season === undefined ? null : periodDays(season, 'winter', facts.borders).from;
  return winterSentence({
    all, few, complete, winters: seasons.length, season: asked.season === null ? null : seasonName(asked.season),
    unitedAlive: asked.united === 'lost' ? 0 : rows.filter(({ fate }) => fate === 3).length,
    running: asked.season === null ? (seasons.filter((one) => !isOver(periodDays(one, 'winter', facts.borders).until, facts)).map(seasonName).at(-1) ?? null) : null,
    half: from === null || all.losses < few ? null : halfDay(rows, asked, from),
  });
}

/** The day by which half of the losses of a winter were written down. */
function halfDay(rows: readonly WatchedRow[], asked: Asked, from: Day): string {
  const lost = lostFates(asked);
  const days = rows.filter((row) => lost.has(row.fate)).map((row) => row.exit).toSorted((a, b) => a - b);
  return monthDayInWords(addDays(from, Math.floor(days[Math.ceil(days.length / 2) - 1] ?? 0)));
}

function notesOf(facts: SurvivalFacts, asked: Asked, all: SurvivalGroup, groups: readonly SurvivalGroup[], seasons: readonly Season[]): string[] {
  const notes: string[] = [];
  if (asked.axis === 'start' && !lifeGroupings.includes(asked.by)) notes.push(`${capital(groupingNoun(asked.by === 'none' ? 'yard' : asked.by))} belongs to one winter; count from the winter’s first day to group by it.`);
  if (asked.by !== 'none' && groups.length > 0) notes.push(groupCounts(groups, groupingNoun(asked.by)));
  const moved = asked.by === 'yard' && asked.axis === 'winter' ? movedInWinters(facts, seasons) : 0;
  if (moved > 0) notes.push(`A colony counts for the yard in which it stood as the winter began; ${moved === 1 ? 'one was' : `${moved} were`} moved later.`);
  if (asked.axis === 'start' && asked.by === 'yard') {
    const often = facts.states.filter(({ stays }) => new Set(stays.filter(({ from }) => from <= facts.asOf).map(({ yard }) => yard)).size > 1).length;
    if (often > 0) notes.push(`A colony is watched in a yard while it stands there; ${often === 1 ? 'one stood' : `${often} stood`} in more than one and ${often === 1 ? 'counts' : 'count'} in each.`);
  }
  if (asked.by === 'stores' && asked.axis === 'winter' && groups.length > 1) notes.push('A colony stands with the ones not weighed until the day it was weighed.');
  for (const one of [all, ...groups]) {
    const { curve, label } = one;
    if (curve?.from !== undefined) notes.push(`${label}: the curve begins on day ${curve.from}, when enough were first watched, and tells of those alive then.`);
    if (curve?.warning !== null && curve?.warning !== undefined) notes.push(`${label}: ${curve.warning}`);
  }
  const small = groups.filter(({ curve }) => curve === null);
  if (small.length > 0) notes.push(`Too few for a curve: ${small.map(({ label, losses, colonies }) => `${label} (${losses} of ${colonies} lost)`).join(', ')}.`);
  const { lastRecord } = reviewFrame(facts, asked.season ?? undefined);
  if (asked.axis === 'winter' && asked.season !== null && lastRecord !== null) notes.push(...stale(lastRecord, asked.season, facts));
  if (asked.axis === 'start' && facts.states.some(({ origin }) => origin === 'opening')) notes.push(`Colonies that were in the book from its start count from ${openingDay(facts.states)}, as their age is not known.`);
  return notes;
}

function openingDay(states: readonly ColonyState[]): string {
  const days = [...new Set(states.filter(({ origin }) => origin === 'opening').map(({ start }) => start))].toSorted();
  const [first] = days;
  return days.length === 1 && first !== undefined ? dayInWords(first) : 'the day they were entered';
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
