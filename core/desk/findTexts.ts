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
  /** Read once for all who search meanwhile. */
  reading: Promise<void> | null;
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
  if (here === undefined || here.names !== called) kept.set(store, (here = { names: called, texts: [], last: 0 as EntryId, reading: null }));
  const mine = here;
  mine.reading ??= readNew(store, mine, yards).finally(() => {
    mine.reading = null;
  });
  await mine.reading;
  return day === null ? mine.texts : mine.texts.filter((text) => text.day <= day);
}

async function readNew(store: Store, here: Kept, yards: readonly Yard[]): Promise<void> {
  const last = ((await store.nextIds()).entry - 1) as EntryId;
  if (here.last >= last) return;
  const names = await namesOf(store, new YardBook(yards));
  while (here.last < last) {
    const upTo = Math.min(here.last + slice, last) as EntryId;
    for (const { entry } of await store.entries({ after: here.last, upTo })) {
      const rules = rulesOf(entry.kind);
      const text = fold(`${entryForms[entry.kind].label} ${rules.sentence(entry.body, names)} ${entry.body.note ?? ''}`);
      here.texts.push({ id: entry.id, day: entry.day, colonies: rules.touches(entry.body).map(({ colony }) => colony), text });
    }
    here.last = upTo;
    await breathe();
  }
}
