import type { NeedKey } from '#shared/contract/needs.ts';

/** The tests of some rules of needs, by the key of the rule. */
export type RuleTests = Partial<Readonly<Record<NeedKey, () => void>>>;
