import { foulbroodSigns, type Cause, type DeadOutSign } from '#shared/deadOut.ts';
import { causeRules, foulbroodCaution, foulbroodWhy, silentSigns, type CauseRule, type Footing } from './causeRules.ts';

export interface Suggestion {
  readonly cause: Cause;
  readonly weight: 'strong' | 'weak';
  /** The rules that speak for it, the strong ones first. */
  readonly reasons: readonly { readonly sentence: string; readonly seen: readonly DeadOutSign[]; readonly source: string | null; readonly footing: Footing }[];
}

export interface DeadOutJudgement {
  /** The notifiable-disease caution; while it stands no cause is suggested. */
  readonly stop: { readonly caution: string; readonly why: string; readonly seen: readonly DeadOutSign[] } | null;
  readonly suggestions: readonly Suggestion[];
  /** What signs do not say. */
  readonly remarks: readonly string[];
}

/** What the signs speak for, by the table of rules; the order of the signs does not matter. Decides nothing. */
export function likelyCauses(signs: readonly DeadOutSign[]): DeadOutJudgement {
  const seen = new Set(signs);
  const alarm = foulbroodSigns.filter((sign) => seen.has(sign));
  const remarks = [...seen].flatMap((sign) => silentSigns[sign] ?? []);
  if (alarm.length > 0) return { stop: { caution: foulbroodCaution, why: foulbroodWhy, seen: alarm }, suggestions: [], remarks: [] };
  const byCause = new Map<Cause, CauseRule[]>();
  for (const rule of causeRules) if (speaks(rule, seen)) byCause.set(rule.cause, [...(byCause.get(rule.cause) ?? []), rule]);
  const suggestions = [...byCause].map(([cause, rules]): Suggestion => ({
    cause,
    weight: rules.some(({ weight }) => weight === 'strong') ? 'strong' : 'weak',
    reasons: rules.toSorted((a, b) => rank(a) - rank(b)).map((rule) => ({
      sentence: rule.reason, seen: [...(rule.all ?? []), ...(rule.any ?? [])].filter((sign) => seen.has(sign)), source: rule.source, footing: rule.footing,
    })),
  }));
  return { stop: null, suggestions: suggestions.toSorted((a, b) => rank(a) - rank(b)), remarks };
}

function speaks({ all = [], any = [], not = [] }: CauseRule, seen: ReadonlySet<DeadOutSign>): boolean {
  return all.every((sign) => seen.has(sign)) && (any.length === 0 || any.some((sign) => seen.has(sign))) && !not.some((sign) => seen.has(sign));
}

function rank({ weight }: { readonly weight: 'strong' | 'weak' }): number {
  return weight === 'strong' ? 0 : 1;
}
