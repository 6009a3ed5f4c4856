import { day, dayInWords, daysBetween, monthDayOf, yearOf, type Day } from '#shared/days.ts';
import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';
import { treatmentForms, type TreatmentForm } from '#core/rules/treatmentRules.ts';
import type { Brood } from './yardNow.ts';

/** What is so in a yard on a day, as the record or the person says. */
export interface TreatmentSetting {
  readonly today: Day;
  /** Expected day temperature, °F. */
  readonly high: number;
  /** Colonies with honey supers on; null where it is not known. */
  readonly withSupers: number | null;
  readonly brood: Brood;
  readonly lastUsed: { readonly ingredient: string; readonly day: Day } | null;
  /** What is in the hives on that day, or was given on it, and its last day. */
  readonly underWay: { readonly ingredient: string; readonly until: Day } | null;
}

export interface FitCell {
  readonly about: 'temperature' | 'supers' | 'brood' | 'flow' | 'rotation';
  readonly fits: 'fits' | 'does not fit' | 'not known';
  readonly reason: string;
}

export interface TreatmentFit {
  readonly form: TreatmentForm;
  readonly name: string;
  readonly ingredient: string;
  readonly fits: FitCell['fits'];
  readonly cells: readonly FitCell[];
}

const noLow = 0;
const noHigh = 120;

/** The usual day temperature of a day's month, °F. */
export function usualHigh(on: Day, rules: RuleValues): number {
  return numberRule(rules, `treat.high.${monthDayOf(on).slice(0, 2)}`);
}

/** The first day of the next flow after a day, by the house's two. */
export function nextFlow(today: Day, rules: RuleValues): Day {
  const year = yearOf(today);
  const days = [year, year + 1].flatMap((one) => ['main', 'second'].map((flow) => day(`${String(one).padStart(4, '0')}-${textRule(rules, `treat.flow.${flow}`)}`)));
  return days.filter((start) => start > today).toSorted()[0] ?? today;
}

/** What each treatment needs against what is so; those that fit first. Every figure is a house rule from memory of labels; the label in the hand goes before it. */
export function treatmentFits(setting: TreatmentSetting, rules: RuleValues): TreatmentFit[] {
  const found = treatmentForms.map(({ key, name, ingredient }): TreatmentFit => {
    const cells = cellsOf(key, ingredient, setting, rules);
    return { form: key, name, ingredient, fits: verdicts.find((verdict) => cells.some(({ fits }) => fits === verdict)) ?? 'fits', cells };
  });
  return found.toSorted((a, b) => verdicts.indexOf(b.fits) - verdicts.indexOf(a.fits));
}

/** The worst first: one need that is not met decides the whole. */
const verdicts = ['does not fit', 'not known', 'fits'] as const;

function cellsOf(form: TreatmentForm, ingredient: string, setting: TreatmentSetting, rules: RuleValues): FitCell[] {
  return [temperature(form, setting, rules), supers(form, setting, rules), brood(form, setting, rules), flow(form, setting, rules), rotation(form, ingredient, setting, rules)];
}

function temperature(form: TreatmentForm, { high }: TreatmentSetting, rules: RuleValues): FitCell {
  const [low, top] = [numberRule(rules, `treat.${form}.low`), numberRule(rules, `treat.${form}.high`)];
  const needs = low <= noLow && top >= noHigh ? 'any' : top >= noHigh ? `from ${low} °F` : low <= noLow ? `up to ${top} °F` : `${low} to ${top} °F`;
  if (needs === 'any') return { about: 'temperature', fits: 'fits', reason: 'any' };
  const reason = `needs ${needs}; ${high} °F expected`;
  return { about: 'temperature', fits: high < low || high > top ? 'does not fit' : 'fits', reason };
}

function supers(form: TreatmentForm, { withSupers }: TreatmentSetting, rules: RuleValues): FitCell {
  const rule = textRule(rules, `treat.${form}.supers`).trim().toLowerCase();
  const about = 'supers';
  if (withSupers === 0) return { about, fits: 'fits', reason: 'none on' };
  if (rule === 'yes') return { about, fits: 'fits', reason: 'may be on' };
  if (withSupers === null) return { about, fits: 'not known', reason: 'not known whether supers are on' };
  const on = `${withSupers} ${withSupers === 1 ? 'colony has' : 'colonies have'} supers on`;
  return rule === 'no' ? { about, fits: 'does not fit', reason: `${on}; take them off first` } : { about, fits: 'not known', reason: `${on}: see the label` };
}

function brood(form: TreatmentForm, { brood: is }: TreatmentSetting, rules: RuleValues): FitCell {
  const rule = textRule(rules, `treat.${form}.brood`).trim().toLowerCase();
  const about = 'brood';
  if (rule === 'any') return { about, fits: 'fits', reason: 'works with brood' };
  if (rule !== 'none' && rule !== 'little') return { about, fits: 'not known', reason: `the house rule says “${rule}”` };
  if (is === 'no') return { about, fits: 'fits', reason: 'no brood' };
  if (is === 'not known') return { about, fits: 'not known', reason: 'nobody has looked at the brood lately' };
  return rule === 'none' ? { about, fits: 'does not fit', reason: 'brood is there; mites under cappings are not reached' } : { about, fits: 'not known', reason: 'brood is there; works in part, best with little' };
}

function flow(form: TreatmentForm, { today }: TreatmentSetting, rules: RuleValues): FitCell {
  const start = nextFlow(today, rules);
  const left = daysBetween(today, start);
  const about = 'flow';
  if (textRule(rules, `treat.${form}.supers`).trim().toLowerCase() === 'yes') return { about, fits: 'fits', reason: 'supers may be on' };
  const [days, clear] = [numberRule(rules, `treat.${form}.days`), numberRule(rules, `treat.${form}.clear`)];
  const needed = days + clear;
  const reason = `${days === 0 ? 'given once' : `${days} days on`}${clear === 0 ? '' : `, ${clear} off`}; ${left} days to the flow of ${dayInWords(start)}`;
  return { about, fits: needed > left ? 'does not fit' : 'fits', reason };
}

function rotation(form: TreatmentForm, ingredient: string, { today, lastUsed, underWay }: TreatmentSetting, rules: RuleValues): FitCell {
  const about = 'rotation';
  if (underWay !== null) {
    const { until } = underWay;
    return { about, fits: 'does not fit', reason: until > today ? `${underWay.ingredient} is in the hives until ${dayInWords(until)}` : `${underWay.ingredient} was given today` };
  }
  if (lastUsed === null) return { about, fits: 'fits', reason: 'no treatment is written down' };
  const same = sameIngredient(lastUsed.ingredient, ingredient);
  if (!same) return { about, fits: 'fits', reason: `last: ${lastUsed.ingredient}` };
  const on = dayInWords(lastUsed.day);
  return textRule(rules, `treat.${form}.rotate`).trim().toLowerCase() === 'yes'
    ? { about, fits: 'does not fit', reason: `used last, ${on}: change the ingredient` }
    : { about, fits: 'fits', reason: `used last, ${on}` };
}

/** Whether what was typed names the ingredient: `Amitraz strips` is amitraz. */
export function sameIngredient(typed: string, ingredient: string): boolean {
  const [written, known] = [plain(typed), plain(ingredient)];
  return written === known || ` ${written} `.includes(` ${known} `);
}

function plain(text: string): string {
  return text.toLowerCase().replaceAll(/[^a-z0-9]+/g, ' ').replace(/\bhop beta acids\b/, 'hop acids').trim();
}
