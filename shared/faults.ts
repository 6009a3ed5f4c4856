import { z } from 'zod';

/** Kinds of expected failure. A code never changes its meaning; sentences may. */
export const faultCodes = [
  'bad-input', 'refused', 'nothing-to-enter', 'unknown', 'no-book', 'book-open', 'file-missing', 'file-exists',
  'not-a-book', 'newer-book', 'damaged-book', 'read-only', 'locked', 'disk-full', 'file-unreadable', 'moved-on', 'defect',
] as const;
export type FaultCode = (typeof faultCodes)[number];

/** One refused row: the file's own line number, or the row's place (from 0) in what was typed. */
export const rowFault = z.object({
  line: z.number().int(),
  column: z.string().nullable(),
  value: z.string(),
  sentence: z.string(),
});
export type RowFault = z.infer<typeof rowFault>;

/**
 * An expected failure as a value: what happened to which record, what is safe, and what to do now (`mend`).
 * `defect` is the one for bugs; its sentence carries an id that is also in the log.
 */
export const fault = z.object({
  ok: z.literal(false),
  code: z.enum(faultCodes),
  sentence: z.string(),
  field: z.string().optional(),
  mend: z.string().optional(),
  rows: z.array(rowFault).optional(),
});
export type Fault = z.infer<typeof fault>;

export type Answer<Value> = { ok: true; value: Value } | Fault;

export function refuse(code: FaultCode, sentence: string, more: Omit<Partial<Fault>, 'ok' | 'code' | 'sentence'> = {}): Fault {
  return { ok: false, code, sentence, ...more };
}

/** Carries a fault through code that would otherwise have to pass it up by hand; caught at the desk, never shown raw. */
export class FaultError extends Error {
  readonly fault: Fault;
  constructor(carried: Fault) {
    super(carried.sentence);
    this.name = 'FaultError';
    this.fault = carried;
  }
}
