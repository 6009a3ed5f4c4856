import type { NeedLine } from '#shared/contract/needs.ts';
import { atYard, needsPages } from '../../parts/needsPages.ts';
import { words } from './words.ts';

export interface PageLink {
  readonly at: string;
  readonly text: string;
  /** What a screen reader says: which page, where, for which line. */
  readonly label: string;
}

export interface PageLinks {
  /** Stands before the links of several yards; null where one link says it all. */
  readonly name: string | null;
  readonly links: readonly PageLink[];
}

/** More yards than these are opened from the page itself. */
const mostYards = 6;

/** The way from a line to the page where its act is chosen: to its yard there, or to each of its yards. */
export function pageLinks({ page, act, yards }: Pick<NeedLine, 'page' | 'act' | 'yards'>): PageLinks | null {
  if (page === null) return null;
  const known = needsPages.find(({ at }) => at === page);
  // A rule may name a page of the needs that is not there yet.
  if (known === undefined && page.startsWith('/needs')) return null;
  const name = known?.name ?? words.openPage;
  const whole = { at: page, text: name, label: `${name}: ${act}` };
  const [first, ...others] = yards;
  if (known === undefined || first === undefined) return { name: null, links: [whole] };
  if (others.length === 0) return { name: null, links: [{ ...whole, at: atYard(page, first.id) }] };
  const links = yards.slice(0, mostYards).map(({ id, code, name: yard }) => ({ at: atYard(page, id), text: code, label: `${code} ${yard}, ${name}: ${act}` }));
  const left = yards.length - links.length;
  return { name, links: left === 0 ? links : [...links, { at: page, text: words.more(left), label: `${words.more(left)}, ${name}: ${act}` }] };
}
