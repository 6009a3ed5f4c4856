import type { EntryId } from '#shared/brands.ts';
import { entryForms } from '#shared/entryForms.ts';
import { fold } from '#shared/fold.ts';
import type { Store } from '#core/book/store.ts';
import type { EntryText } from '#core/find/findEntries.ts';
import { rulesOf } from '#core/journal/kinds.ts';
import type { Picture } from './picture.ts';

interface Kept {
  /** How yards are called and masses written in the sentences; when that changes they are all made anew. */
  readonly names: string;
  readonly texts: EntryText[];
  last: EntryId;
}

const kept = new WeakMap<Store, Kept>();

/** The searchable texts of all entries ever made. The journal only grows, so after the first time only what is new is read. */
export async function entryTexts(store: Store, { yardList, names }: Picture): Promise<readonly EntryText[]> {
  const called = JSON.stringify([names.massUnit, yardList.map(({ id, code, name }) => [id, code, name])]);
  let here = kept.get(store);
  if (here === undefined || here.names !== called) kept.set(store, (here = { names: called, texts: [], last: 0 as EntryId }));
  const { entry: next } = await store.nextIds();
  if (here.last + 1 >= next) return here.texts;
  for (const { entry } of await store.entries({ after: here.last })) {
    const rules = rulesOf(entry.kind);
    const text = fold(`${entryForms[entry.kind].label} ${rules.sentence(entry.body, names)} ${entry.body.note ?? ''}`);
    here.texts.push({ id: entry.id, day: entry.day, colonies: rules.touches(entry.body).map(({ colony }) => colony), text });
  }
  here.last = (next - 1) as EntryId;
  return here.texts;
}
