import type { z } from 'zod';
import type { Kind } from '#shared/entryForms.ts';
import type { EntryOf, KindRules } from './kindRules.ts';
import { absconded } from './kinds/absconded.ts';
import { combine } from './kinds/combine.ts';
import { feed } from './kinds/feed.ts';
import { gift } from './kinds/gift.ts';
import { harvest } from './kinds/harvest.ts';
import { inspection } from './kinds/inspection.ts';
import { install } from './kinds/install.ts';
import { loss } from './kinds/loss.ts';
import { mites } from './kinds/mites.ts';
import { move } from './kinds/move.ts';
import { note } from './kinds/note.ts';
import { purchase } from './kinds/purchase.ts';
import { queen } from './kinds/queen.ts';
import { requeen } from './kinds/requeen.ts';
import { sale } from './kinds/sale.ts';
import { split } from './kinds/split.ts';
import { stock } from './kinds/stock.ts';
import { stores } from './kinds/stores.ts';
import { supersOff } from './kinds/supersOff.ts';
import { supersOn } from './kinds/supersOn.ts';
import { treatment } from './kinds/treatment.ts';
import { work } from './kinds/work.ts';

/** Every kind of entry; the one table that the fold, the reader, the writer and the sentences go through. */
export const kindRules = {
  install, split, combine, requeen, queen, move, inspection, mites, treatment, feed,
  'supers on': supersOn, 'supers off': supersOff, harvest, stores, loss, sale, gift, absconded, stock, purchase, work, note,
} as const satisfies { readonly [Name in Kind]: unknown };

export type BodyOf<Name extends Kind> = z.output<(typeof kindRules)[Name]['body']>;

/** An entry of a known kind; narrowing on `kind` narrows the body. */
export type Entry = { [Name in Kind]: EntryOf<BodyOf<Name>> & { readonly kind: Name } }[Kind];
export type Body = BodyOf<Kind>;

/**
 * The rules of a kind for a body of that kind. The table's key pairs rules and body, which the compiler cannot
 * follow through a union, so this is the one place where the pairing is asserted.
 */
export function rulesOf(kind: Kind): KindRules<Body> {
  return kindRules[kind] as unknown as KindRules<Body>;
}
