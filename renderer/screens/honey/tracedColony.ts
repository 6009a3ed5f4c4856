import type { OutputOf } from '#shared/contract/contract.ts';
import { words } from './words.ts';

type Colony = OutputOf<'lots.traceable'>['colonies'][number];

export interface NamedColony extends Colony {
  readonly name: string;
}

/** A label may have been used again; then the day on which the colony came tells them apart. */
export function named(colonies: readonly Colony[]): NamedColony[] {
  const times = Map.groupBy(colonies, ({ label }) => label.toLowerCase());
  return colonies.map((one) => ({ ...one, name: (times.get(one.label.toLowerCase())?.length ?? 0) > 1 ? words.since(one.label, one.from) : one.label }));
}

/** The colony that was typed, or what to say where there is none, or more than one. */
export function tracedColony(colonies: readonly NamedColony[], typed: string): { readonly colony: NamedColony | undefined; readonly said: string | null } {
  const text = typed.trim();
  const asked = text.toLowerCase();
  const colony = colonies.find(({ name }) => name.toLowerCase() === asked);
  if (colony !== undefined || text === '') return { colony, said: null };
  const called = colonies.filter(({ label }) => label.toLowerCase() === asked).length;
  if (called > 1) return { colony, said: words.calledSo(called, text) };
  return { colony, said: nearTo(colonies, text).length === 0 ? words.noColony(text) : null };
}

/** Those that what is typed may become. */
export function nearTo(colonies: readonly NamedColony[], typed: string): NamedColony[] {
  return colonies.filter(({ name }) => name.toLowerCase().startsWith(typed.trim().toLowerCase()));
}
