import { openScratch } from './openDatabase.ts';
import { sqliteStore } from './sqliteStore.ts';
import type { Store } from './store.ts';

/** A scratch book in memory: the same tables and checks, gone when it is closed. */
export function memoryStore(): Store {
  return sqliteStore(openScratch(), 'a scratch book');
}
