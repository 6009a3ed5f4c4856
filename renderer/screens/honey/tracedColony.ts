import type { OutputOf } from '#shared/contract/contract.ts';
import { words } from './words.ts';

type Colony = OutputOf<'lots.traceable'>['colonies'][number];

/** The colony that was typed, or what to say where there is none, or more than one. */
export function tracedColony(colonies: readonly Colony[], typed: string): { readonly colony: Colony | undefined; readonly said: string | null } {
  const text = typed.trim();
  const asked = text.toLowerCase();
  const colony = colonies.find(({ name }) => name.toLowerCase() === asked);
  if (colony !== undefined || text === '') return { colony, said: null };
  const called = colonies.filter(({ label }) => label.toLowerCase() === asked).length;
  if (called > 1) return { colony, said: words.calledSo(called, text) };
  return { colony, said: nearTo(colonies, text).length === 0 ? words.noColony(text) : null };
}

/** Those that what is typed may become. */
export function nearTo(colonies: readonly Colony[], typed: string): Colony[] {
  return colonies.filter(({ name }) => name.toLowerCase().startsWith(typed.trim().toLowerCase()));
}
