import type { Answer } from '#shared/faults.ts';

/** From a host to the keeper. */
export type ToKeeper =
  | { readonly id: number; readonly name: unknown; readonly input: unknown }
  | { readonly close: true };

/** From the keeper to its host. `unfit` says why it cannot work at all on this machine. */
export type FromKeeper =
  | { readonly id: number; readonly answer: Answer<unknown> }
  | { readonly closed: true }
  | { readonly unfit: string };
