import { z } from 'zod';
import { needKeys } from '#shared/contract/needs.ts';
import { dayValue } from '#shared/contract/values.ts';
import type { Paper, Store } from '#core/book/store.ts';

/** What was put off or dismissed, by the key of the need. */
const putOffPaper = 'need put off';

const putOffBody = z.strictObject({
  rule: z.enum(needKeys),
  act: z.string(),
  /** The colony or yard, in words, for the day when no record asks for it any more. */
  about: z.string(),
  /** It is asked for again from this day on; null: never again. */
  until: dayValue.nullable(),
  reason: z.string(),
  on: dayValue,
});
export type PutOffBody = z.infer<typeof putOffBody>;

export async function readPutOff(store: Store): Promise<Map<string, PutOffBody>> {
  return new Map([...(await store.papers(putOffPaper))].map(([key, body]) => [key, putOffBody.parse(JSON.parse(body))]));
}

export function putOffPapers(keys: readonly string[], bodyOf: (key: string) => PutOffBody | null): Paper[] {
  return keys.map((key) => {
    const body = bodyOf(key);
    return { kind: putOffPaper, key, body: body === null ? null : JSON.stringify(body) };
  });
}
