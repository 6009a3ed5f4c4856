import type { YardId } from '#shared/brands.ts';
import type { FallView, MitesColony, MitesYard, TreatmentRow } from '#shared/contract/mites.ts';
import { addDays, type Day } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { periodDays, seasonName, seasonOf } from '#shared/seasons.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import { byStand } from '#core/lineage/standOrder.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import type { Efficacy } from '#core/mites/efficacy.ts';
import { treatmentCautions } from '#core/mites/miteCautions.ts';
import { miteRate, type RatePer100 } from '#core/mites/miteRate.ts';
import { miteThresholdsOn } from '#core/mites/miteThresholds.ts';
import type { Treated } from '#core/mites/treatmentActs.ts';
import { nextFlow, sameIngredient, treatmentFits, usualHigh } from '#core/mites/treatmentFits.ts';
import type { TreatmentSpan } from '#core/mites/treatmentSpans.ts';
import { broodIn, yardNow } from '#core/mites/yardNow.ts';
import { treatmentForms } from '#core/rules/treatmentRules.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { miteBookOf, togetherOf, type MiteBook } from './miteBook.ts';
import type { Picture } from './picture.ts';

export const miteHandlers: Handlers<'mites.page' | 'mites.yard' | 'mites.fits' | 'mites.results' | 'mites.log'> = {
  'mites.page': async (_, context) => {
    const { picture, today, mites } = await here(context);
    const standing = Map.groupBy(picture.states.filter((state) => aliveOn(state, today)), (state) => yardOn(state, today));
    const yards = picture.yardList.flatMap(({ id, code, name }) => {
      const own = standing.get(id) ?? [];
      return own.length === 0 ? [] : [{ id, code, name, ...yardView(own, picture, mites, today) }];
    });
    return { asOf: today, yards };
  },
  'mites.yard': async ({ id }, context) => {
    const { picture, today, mites } = await here(context);
    const yard = requireYard(picture, id);
    const { states, rules, borders, stands } = picture;
    const standing = states.filter((state) => aliveOn(state, today) && yardOn(state, today) === yard).toSorted(byStand(stands.get(yard) ?? []));
    const now = yardNow(standing, mites.spans, today, rules);
    const labelOf = (colony: ColonyState['id']) => picture.names.colony(colony);
    const season = seasonOf(today, borders);
    const { from, until } = periodDays(season, 'year', borders);
    return {
      asOf: today,
      season: { from, until, name: seasonName(season) },
      colonies: now.counted.map(({ colony, count, rate, above, inRound, treatedSince }): MitesColony => ({ id: colony, label: labelOf(colony), ...count, rate: rateView(rate), above, inRound, treatedSince: spanView(treatedSince) })),
      uncounted: now.uncounted.map((colony) => ({ id: colony, label: labelOf(colony) })),
      counts: states.flatMap((state) =>
        state.miteCounts.flatMap((count) => (count.day >= from && count.day < until && count.day <= today && yardOn(state, count.day) === yard ? [{ id: state.id, label: state.label, ...count, rate: rateView(miteRate(count)) }] : [])),
      ),
      treatments: mites.treated.flatMap(({ act }) => (act.yard === yard && act.from < until && act.until >= from ? [{ ingredient: act.ingredient, from: act.from, until: act.until, colonies: act.colonies.length, whole: act.whole }] : [])),
      thresholds: thresholdsOver(from, until, now.brood !== 'no', picture),
    };
  },
  'mites.fits': async ({ yard: asked, high, supers, brood }, context) => {
    const { picture, today, mites } = await here(context);
    const yard = requireYard(picture, asked);
    const { states, rules } = picture;
    const standing = states.filter((state) => aliveOn(state, today) && yardOn(state, today) === yard);
    const recordBrood = broodIn(standing, today, rules);
    const recordSupers = standing.filter(({ id }) => mites.supersOn(id, today) > 0).length;
    const usual = usualHigh(today, rules);
    const ids = new Set(standing.map(({ id }) => id));
    const given = mites.treated.filter(({ act }) => act.yard === yard || act.colonies.some(({ id }) => ids.has(id))).map(({ act }) => act);
    const last = given.at(-1) ?? null;
    const on = given.findLast((act) => act.from <= today && act.until >= today) ?? null;
    const setting = {
      today, high: high ?? usual, brood: brood ?? recordBrood, lastUsed: last === null ? null : { ingredient: last.ingredient, day: last.from },
      underWay: on === null ? null : { ingredient: on.ingredient, until: on.until },
      withSupers: supers === null ? recordSupers : supers === 'off' ? 0 : Math.max(1, recordSupers),
    };
    return {
      asOf: today,
      setting: { high: setting.high, usualHigh: usual, withSupers: setting.withSupers, recordSupers, brood: setting.brood, recordBrood, nextFlow: nextFlow(today, rules), lastUsed: setting.lastUsed },
      fits: treatmentFits(setting, rules).map(({ cells, ...fit }) => ({ ...fit, cells: [...cells] })),
      cautions: [...treatmentCautions],
    };
  },
  'mites.results': async (_, context) => {
    const { picture, today, mites } = await here(context);
    const groups = Map.groupBy(mites.treated, ({ act }) => treatmentForms.find(({ ingredient }) => sameIngredient(act.ingredient, ingredient))?.ingredient ?? act.ingredient.trim().toLowerCase());
    const recent = periodDays(seasonOf(today, picture.borders) - 1, 'year', picture.borders).from;
    return {
      asOf: today,
      rows: mites.treated.filter(({ act }) => act.from >= recent).toReversed().map((one) => rowView(one, picture, mites)),
      ingredients: [...groups].map(([ingredient, own]) => ({
        ingredient, treatments: own.length, judged: own.filter(({ pairs, during }) => pairs.length > 0 && !during).length, result: fallView(togetherOf(own)),
        seasons: [...Map.groupBy(own, ({ act }) => seasonOf(act.from, picture.borders))].toSorted(([a], [b]) => a - b).map(([season, inIt]) => ({ season, name: seasonName(season), result: fallView(togetherOf(inIt)) })),
      })),
    };
  },
  'mites.log': async ({ season: asked }, context) => {
    const { picture, today, mites } = await here(context);
    const { borders, states, names } = picture;
    const season = asked ?? seasonOf(today, borders);
    const { from, until } = periodDays(season, 'year', borders);
    const inSeason = (day: Day) => day >= from && day < until && day <= today;
    const first = states.reduce((least: Day | null, { start }) => (least === null || start < least ? start : least), null);
    const last = seasonOf(today, borders);
    const begun = first === null ? last : Math.min(seasonOf(first, borders), last);
    const counts = states.flatMap((state) => state.miteCounts.flatMap((count) => (inSeason(count.day) ? [{ yard: yardOn(state, count.day), colony: state.id }] : [])));
    return {
      asOf: today, season, seasonName: seasonName(season),
      seasons: Array.from({ length: last - begun + 1 }, (_unused, at) => ({ season: begun + at, name: seasonName(begun + at) })),
      rows: mites.treated.filter(({ act }) => inSeason(act.from)).map((one) => rowView(one, picture, mites)),
      counted: [...Map.groupBy(counts, ({ yard }) => yard)]
        .map(([yard, own]) => ({ yard: yard === null ? '' : names.yard(yard).code, colonies: new Set(own.map(({ colony }) => colony)).size, counts: own.length }))
        .toSorted((a, b) => (a.yard < b.yard ? -1 : 1)),
    };
  },
};

async function here(context: DeskContext) {
  const book = context.open();
  const picture = await book.picture();
  const today = await book.today(context.options.now().day);
  return { picture, today, mites: await miteBookOf(book, picture, today) };
}

function requireYard({ yardList }: Picture, id: YardId): YardId {
  if (!yardList.some((yard) => yard.id === id)) throw new FaultError(refuse('unknown', 'That yard is not in this book.'));
  return id;
}

function yardView(standing: readonly ColonyState[], { rules, names }: Picture, mites: MiteBook, today: Day): Omit<MitesYard, 'id' | 'code' | 'name'> {
  const { estimate, thresholds, counted, projection, round, treatedSince, ...now } = yardNow(standing, mites.spans, today, rules);
  return {
    living: now.living, brood: now.brood, speaks: now.speaks, verdict: now.verdict, more: now.more, counted: counted.length,
    watch: thresholds.watch, treat: thresholds.treat, phase: thresholds.phase, rule: thresholds.rule,
    round: round === null ? null : [round[0], round[1]],
    treatedSince: spanView(treatedSince),
    washed: estimate.washed, rate: estimate.rate === null ? null : rateView(estimate.rate), basis: estimate.basis, few: estimate.few, above: estimate.above,
    hot: estimate.hot.map(({ colony, above, rate }) => ({ id: colony, label: names.colony(colony), above, rate: rateView(rate) })),
    projection,
  };
}

function rateView({ per100, limits }: RatePer100): { per100: number; limits: [number, number] } {
  return { per100, limits: [limits.lower, limits.upper] };
}

function spanView(span: TreatmentSpan | null): MitesYard['treatedSince'] {
  return span === null ? null : { ingredient: span.ingredient, from: span.from, until: span.until, entry: span.entry };
}

function fallView({ limits, ...rest }: Efficacy): FallView {
  return { ...rest, limits: limits === null ? null : [Number.isFinite(limits.lower) ? limits.lower : null, limits.upper] };
}

function rowView({ act, during, result }: Treated, { borders, names }: Picture, mites: MiteBook): TreatmentRow {
  return {
    entries: [...act.entries], yard: act.yard === null ? '' : names.yard(act.yard).code, ingredient: act.ingredient, season: seasonOf(act.from, borders), from: act.from, until: act.until, ended: act.ended, whole: act.whole,
    treated: act.colonies.length, labels: act.whole ? [] : act.colonies.map(({ label }) => label), withSupers: act.colonies.filter(({ id }) => mites.supersOn(id, act.from) > 0).length,
    during, result: fallView(result), notes: [...act.notes],
  };
}

/** The season in stretches of one threshold. */
function thresholdsOver(from: Day, until: Day, brood: boolean, { rules }: Picture): { from: Day; until: Day; treat: number }[] {
  const found: { from: Day; until: Day; treat: number }[] = [];
  for (let at = from; at < until; at = addDays(at, 1)) {
    const { treat } = miteThresholdsOn(at, brood, rules);
    const last = found.at(-1);
    if (last !== undefined && last.treat === treat) last.until = addDays(at, 1);
    else found.push({ from: at, until: addDays(at, 1), treat });
  }
  return found;
}
