import type { EntryId } from '#shared/brands.ts';
import { entryForms } from '#shared/entryForms.ts';
import { fold } from '#shared/fold.ts';
import type { Store } from '#core/book/store.ts';
import type { EntryText } from '#core/find/findEntries.ts';
import { rulesOf } from '#core/journal/kinds.ts';
import { YardBook, type Yard } from '#core/journal/yardBook.ts';
import { namesOf } from './names.ts';
import type { Book } from './openBook.ts';
import { presentOf } from './pastStore.ts';
import { breathe } from './turns.ts';

interface Kept {
  /** How yards are called and masses written in the sentences; when that changes they are all made anew. */
  readonly names: string;
  readonly texts: EntryText[];
  last: EntryId;
}

const kept = new WeakMap<Store, Kept>();
/** So many are read at a time; what was read stays read when a write comes in between. */
const slice = 1500;

/** The searchable texts of all entries ever made up to the day that is shown. The journal only grows, so after the first time only what is new is read. */
export async function entryTexts({ store: shown, day }: Book): Promise<readonly EntryText[]> {
  const store = presentOf(shown);
  const yards = await store.yards();
  const called = JSON.stringify([(await store.settings()).get('massUnit'), yards.map(({ id, code, name }) => [id, code, name])]);
  let here = kept.get(store);
  if (here === undefined || here.names !== called) kept.set(store, (here = { names: called, texts: [], last: 0 as EntryId }));
  await readNew(store, here, yards);
  return day === null ? here.texts : here.texts.filter((text) => text.day <= day);
}

/** Several may be at it at once, each in its turns: they go on where the other left off. */
async function readNew(store: Store, here: Kept, yards: readonly Yard[]): Promise<void> {
  const last = ((await store.nextIds()).entry - 1) as EntryId;
  if (here.last >= last) return;
  const names = await namesOf(store, new YardBook(yards));
  while (here.last < last) {
    const after = here.last;
    const upTo = Math.min(after + slice, last) as EntryId;
    const entries = await store.entries({ after, upTo });
    if (here.last !== after) continue;
    for (const { entry } of entries) {
      const rules = rulesOf(entry.kind);
      const text = fold(`${entryForms[entry.kind].label} ${rules.sentence(entry.body, names)} ${entry.body.note ?? ''}`);
      here.texts.push({ id: entry.id, day: entry.day, colonies: rules.touches(entry.body).map(({ colony }) => colony), text });
    }
    here.last = upTo;
    await breathe();
  }
}
