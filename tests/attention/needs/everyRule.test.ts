import { describe, expect, test } from 'vitest';
import type { NeedKey } from '#shared/contract/needs.ts';
import { needRules } from '#core/attention/needs/needRules.ts';
import { dues } from './dues.ts';
import { seenOf, useNeedBook } from './needBook.ts';

useNeedBook();

/** Every key of the contract: the compiler names the rule that has no test. */
const all = { ...dues } as Partial<Record<NeedKey, () => void>>;

for (const [key, tests] of Object.entries(all)) describe(key, tests);
