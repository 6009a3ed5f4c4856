import type { Together } from '#shared/contract/lossFactors.ts';
import { dayNumber } from '#shared/days.ts';
import { gramsPerPound } from '#shared/units.ts';
import { coxModel, type CoxModel, type CoxTerm } from '#core/stats/coxModel.ts';
import { splitSpans } from '#core/stats/splitSpans.ts';
import { capital, colonies, listed, losses, ratioRange, ratioText } from './lossNumbers.ts';
import type { WinterRow } from './winterRows.ts';

interface Measure {
  readonly name: string;
  /** "Each extra mite per 100 bees in late summer": the start of its sentence. */
  readonly each: string;
  readonly valueOf: (row: WinterRow) => number | null;
  /** Days into the winter at which the value became known; the colony is watched from then on. */
  readonly knownAt: (row: WinterRow) => number;
  /** Those with the value 1, and those with 0, where it is a yes or no. */
  readonly sides: readonly [string, string] | null;
}

/** A row with all its measures read off once: the models ask for them again and again. */
interface Told extends WinterRow {
  readonly values: readonly (number | null)[];
  readonly known: readonly number[];
}

export interface TogetherRules {
  /** Losses wanted for each measure. */
  readonly perCoefficient: number;
  /** A yes or no with fewer colonies on one side is not judged. */
  readonly few: number;
}

const measures: readonly Measure[] = [
  { name: 'late-summer mites', each: 'Each extra mite per 100 bees in late summer', valueOf: ({ colony }) => colony.mites?.per100 ?? null, knownAt: () => 0, sides: null },
  { name: 'the queen’s age', each: 'Each year of the queen’s age', valueOf: ({ colony }) => colony.queenAge, knownAt: () => 0, sides: null },
  {
    name: 'autumn stores', each: 'Each 10 lb more of autumn stores',
    valueOf: ({ colony: { stores } }) => (stores?.grams === undefined || stores.grams === null ? null : stores.grams / gramsPerPound / 10),
    knownAt: ({ colony: { stores, from } }) => (stores === null ? 0 : Math.max(0, dayNumber(stores.day) - dayNumber(from))), sides: null,
  },
  {
    name: 'treatment', each: 'Having been treated before winter', valueOf: ({ colony }) => (colony.treated.length > 0 ? 1 : 0), knownAt: () => 0,
    sides: ['the treated', 'those without a treatment on record'],
  },
];

const [mites, queenAge, stores, treatment] = measures as readonly [Measure, Measure, Measure, Measure];

/** First what most colonies have on record; then, among those whose mites were counted, mites beside the same. */
export function togetherRisk(winters: readonly WinterRow[], rules: TogetherRules): Together[] {
  const rows = winters.map((row): Told => ({ ...row, values: measures.map(({ valueOf }) => valueOf(row)), known: measures.map(({ knownAt }) => knownAt(row)) }));
  const all = heldTogether(rows, [queenAge, stores, treatment], rules);
  const washed = rows.filter((row) => valueIn(row, mites) !== null);
  const first = { heading: 'All colonies', ...all };
  if (washed.length === 0 || all.terms.length === 0) return [first];
  return [first, { heading: `The ${colonies(washed.length)} whose mites were counted`, ...heldTogether(washed, [mites, queenAge, stores, treatment], rules) }];
}

/**
 * What went with losses when the others are held fixed: a Cox model of the days of the winter, Efron's ties, each
 * yard and winter with a baseline of its own, so that neither a bad winter nor a bad yard is read as anything else.
 * A measure joins in the order given while there are `perCoefficient` losses for each; a colony is in only if all of
 * them are on record, and from the day on which the last was known.
 */
function heldTogether(rows: readonly Told[], wanted: readonly Measure[], { perCoefficient, few }: TogetherRules): Omit<Together, 'heading'> {
  const notes: string[] = [];
  const kept: Measure[] = [];
  for (const measure of wanted) {
    const tried = [...kept, measure];
    const there = usable(rows, tried);
    const small = smallerSide(measure, there);
    if (small !== null && small.count < few) {
      notes.push(`${capital(measure.name)} is left out: of the ${colonies(there.length)} ${kept.length === 0 ? 'looked at' : `with ${listed(kept.map(({ name }) => name))} on record`} there ${small.count === 1 ? 'is' : 'are'} ${small.count === 0 ? 'none' : `only ${small.count}`} of ${small.name}.`);
      continue;
    }
    const lost = there.filter(({ fate }) => fate === 'lost').length;
    if (lost >= perCoefficient * tried.length) kept.push(measure);
    else if (lost === 0 && usable(rows, [measure]).length === 0) notes.push(`${capital(measure.name)} ${measure.name.endsWith('s') ? 'are' : 'is'} left out: nothing of that is on record.`);
    else notes.push(`${capital(measure.name)} ${measure.name.endsWith('s') ? 'are' : 'is'} left out: ${tried.length === 1 ? 'that is' : `${listed(['that', ...kept.map(({ name }) => name)])} are`} on record for ${lost} of the lost, and ${perCoefficient * tried.length} are wanted.`);
  }
  const used = usable(rows, kept);
  const base = { colonies: used.length, losses: used.filter(({ fate }) => fate === 'lost').length, missing: rows.length - used.length };
  if (kept.length === 0) {
    const lost = rows.filter(({ fate }) => fate === 'lost').length;
    return { ...base, colonies: 0, losses: 0, missing: rows.length, terms: [], sentences: [lost === 0 ? 'Nothing was lost, so there is nothing to hold fixed.' : `Too few to tell: ${losses(lost)} in all ${lost === 1 ? 'does' : 'do'} not allow one thing to be held beside the others.`], notes: [] };
  }
  const model = modelOf(used, kept);
  if (model === null || !model.converged) {
    const dropped = model === null ? kept.map(({ name }) => constant(name)) : [];
    return { ...base, terms: [], sentences: ['Within single yards and winters the colonies do not differ enough for a ratio to be worked out.'], notes: [...notes, ...dropped] };
  }
  const terms = model.terms.map((term) => ({ term, measure: kept.find(({ name }) => name === term.name) }));
  const alone = terms.length === 1;
  const sentences = terms.flatMap(({ term, measure }) => (measure === undefined ? [] : [term.diverges ? partedSentence(measure, used) : termSentence(measure.each, term, alone)]));
  const later = laterWashes(used, kept, model);
  const shown = terms.map(({ term }) => ({ name: term.name, ratio: term.diverges ? null : term.hazardRatio, range: term.diverges ? null : ([term.limits.lower, term.limits.upper] as [number, number]), p: term.diverges ? null : term.p }));
  return {
    ...base, terms: shown, sentences: later === null ? sentences : [...sentences, later],
    notes: [
      ...notes,
      ...model.dropped.map(({ name, why, sameAs }) => (why === 'constant' ? constant(name) : `${capital(name)} cannot be told from ${sameAs ?? 'the others together'} here: both say the same.`)),
      ...(base.missing === 0 ? [] : [`${colonies(base.missing)} of ${rows.length} ${base.missing === 1 ? 'is' : 'are'} not in it: ${whyMissing(rows, kept)}.`]),
    ],
  };
}

/** Of a yes or no, the side with fewer colonies. */
function smallerSide(measure: Measure, rows: readonly Told[]): { name: string; count: number } | null {
  const { sides } = measure;
  if (sides === null) return null;
  const yes = rows.filter((row) => valueIn(row, measure) === 1).length;
  return yes * 2 < rows.length ? { name: sides[0], count: yes } : { name: sides[1], count: rows.length - yes };
}

function whyMissing(rows: readonly Told[], kept: readonly Measure[]): string {
  const lacking = kept.filter((measure) => rows.some((row) => valueIn(row, measure) === null)).map(({ name }) => name);
  const late = rows.some((row) => isKnown(row, kept) && entryOf(row, kept) >= row.exit);
  return [...(lacking.length === 0 ? [] : [`${listed(lacking)} not on record`]), ...(late ? ['something known only after the colony had ended'] : [])].join(', or ');
}

function constant(name: string): string {
  return `${capital(name)} cannot be judged: within single yards and winters the colonies did not differ in it.`;
}

function entryOf(row: Told, kept: readonly Measure[]): number {
  return kept.reduce((latest, measure) => Math.max(latest, row.known[placeOf(measure)] ?? 0), row.entry);
}

function isKnown(row: Told, kept: readonly Measure[]): boolean {
  return kept.every((measure) => valueIn(row, measure) !== null);
}

function placeOf(measure: Measure): number {
  return measures.indexOf(measure);
}

function valueIn(row: Told, measure: Measure): number | null {
  return row.values[placeOf(measure)] ?? null;
}

function usable(rows: readonly Told[], kept: readonly Measure[]): Told[] {
  return rows.filter((row) => isKnown(row, kept) && entryOf(row, kept) < row.exit);
}

function spansOf(rows: readonly Told[], kept: readonly Measure[]) {
  return { entry: rows.map((row) => entryOf(row, kept)), exit: rows.map(({ exit }) => exit), status: rows.map(({ fate }) => (fate === 'lost' ? 1 : 0)) };
}

function stratumOf({ season, yard }: WinterRow): string {
  return `${season} ${yard}`;
}

function modelOf(rows: readonly Told[], kept: readonly Measure[]): CoxModel | null {
  return coxModel(spansOf(rows, kept), kept.map((measure) => ({ name: measure.name, values: rows.map((row) => valueIn(row, measure)) })), rows.map(stratumOf));
}

/** The same with each wash of the winter counted from its day on; null where there was none, or it changes no colony's row. */
function laterWashes(rows: readonly Told[], kept: readonly Measure[], model: CoxModel): string | null {
  const [first, ...others] = kept;
  const own = model.terms.find(({ name }) => name === mites.name);
  if (first !== mites || own === undefined || own.diverges) return null;
  const pieces = splitSpans(spansOf(rows, kept), rows.map((row) => [{ time: Math.min(0, entryOf(row, kept)), value: valueIn(row, mites) ?? 0 }, ...row.washes.filter(({ time }) => time > 0)]));
  if (pieces.row.length === rows.length) return null;
  const of = (at: number) => rows[at] as Told;
  const covariates = [{ name: mites.name, values: pieces.value }, ...others.map((measure) => ({ name: measure.name, values: pieces.row.map((at) => valueIn(of(at), measure)) }))];
  const term = coxModel(pieces, covariates, pieces.row.map((at) => stratumOf(of(at))))?.terms.find(({ name }) => name === mites.name);
  if (term === undefined || term.diverges) return null;
  const range: [number, number] = [term.limits.lower, term.limits.upper];
  if (ratioRange(range) === ratioRange([own.limits.lower, own.limits.upper])) return null;
  return `With every wash of the winter counted from its own day on, an extra mite per 100 bees went with ${ratioText(term.hazardRatio)} times the risk, ${ratioRange(range)}.`;
}

function termSentence(each: string, term: CoxTerm, alone: boolean): string {
  const range: [number, number] = [term.limits.lower, term.limits.upper];
  const held = alone ? 'yard and winter held fixed' : 'the others, yard and winter held fixed';
  const chance = range[0] < 1 && range[1] > 1 ? '; that may be chance' : '';
  return `${each} went with ${ratioText(term.hazardRatio)} times the risk of loss, ${ratioRange(range)}, ${held}${chance}.`;
}

/** The lost and the others do not overlap, so that a ratio would run off to nought or without end. */
function partedSentence(measure: Measure, rows: readonly Told[]): string {
  const { name, sides } = measure;
  if (sides !== null) {
    const empty = ([1, 0] as const).findIndex((side) => !rows.some((row) => row.fate === 'lost' && valueIn(row, measure) === side));
    const side = sides[empty === -1 ? 0 : empty];
    if (empty !== -1) return `No losses among ${side ?? name}, so the ratio for ${name} cannot be estimated.`;
  }
  return `By ${name} the lost and the others are parted within their yards and winters, so its ratio cannot be estimated.`;
}
