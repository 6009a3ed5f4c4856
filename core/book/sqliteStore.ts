import type { Database } from 'better-sqlite3';
import { sql, type Compilable, type ExpressionBuilder } from 'kysely';
import type { ColonyId, EntryId, GestureId, YardId } from '#shared/brands.ts';
import { addDays, type Day } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { foldVersion, type ColonyState } from '#core/journal/colonyState.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { refold } from '#core/journal/refold.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { databaseFault } from './databaseFault.ts';
import { colonyFromRow, colonyToRow, entryFromRow, entryToRow, storedFromRow } from './entryRows.ts';
import { closeDatabase } from './openDatabase.ts';
import { build, inParts, SqliteRunner } from './sqliteRunner.ts';
import type { Change, EntryQuery, Gesture, GestureKind, Mark, Paper, Store, StoredEntry } from './store.ts';
import { projections, type Tables } from './tables.ts';
import { yardStore } from './yardStore.ts';

const standing = build.selectFrom('entry').where(({ not, exists, selectFrom }) => not(exists(selectFrom('struck').select('struck.entry_id').whereRef('struck.entry_id', '=', 'entry.id'))));
const withMarks = build
  .selectFrom('entry')
  .leftJoin('struck', 'struck.entry_id', 'entry.id')
  .leftJoin('mark', 'mark.id', 'struck.mark_id')
  .leftJoin('gesture', 'gesture.id', 'mark.gesture_id')
  .select(['entry.id', 'entry.gesture_id', 'entry.day', 'entry.place', 'entry.kind', 'entry.body', 'entry.replaces', 'mark.reason as reason', 'gesture.kind as by']);

/** What is read between two breaths: each takes some milliseconds. */
const [statesAtOnce, coloniesAtOnce, entriesAtOnce, actsAtOnce] = [250, 40, 1500, 20];
/** Days, of which the first are read together, and most. */
const [firstStretch, longestStretch] = [32, 2048];

/** Countings that are kept at most. */
const mostCounted = 16;

/** The store over one SQLite file. Long reads are made in slices; `breathe` is called between them and may let others use the store, who must not write. */
export function sqliteStore(database: Database, path: string, breathe: () => Promise<void> = atOnce): Store {
  const db = new SqliteRunner(database);

  const position = () => Number(db.first(build.selectFrom('meta').select('value').where('key', '=', 'position'))?.value ?? '0');
  const keepMeta = (key: string, value: string) => db.run(build.insertInto('meta').values({ key, value }).onConflict((on) => on.column('key').doUpdateSet({ value })));
  const advance = () => {
    const next = position() + 1;
    keepMeta('position', String(next));
    return next;
  };
  /** The latest changes of states, oldest first; an act that failed leaves a position that no later one joins on to. */
  let latest: { readonly from: number; readonly states: readonly ColonyState[]; readonly vanished: readonly ColonyId[] }[] = [];
  const note = (from: number, states: readonly ColonyState[], vanished: readonly ColonyId[]) => {
    latest = [...latest.filter((one) => one.from < from).slice(-63), { from, states, vanished }];
  };
  /** What was counted, by position and day: a large book takes long to count, and every look back asks for its days. */
  const counted = new Map<string, Awaited<ReturnType<Store['counts']>>>();
  /** An act is never changed once it was made, nor are its entries. */
  const acts: { readonly known: Gesture[]; upTo: number } = { known: [], upTo: 0 };
  const keepWhole = (act: () => void) => {
    const from = position();
    whole(act);
    note(from, [], []);
  };
  /** All of it or none; an expected failure of the file comes out as a fault. */
  const whole = <Value>(act: () => Value): Value => {
    try {
      return database.transaction(act).immediate();
    } catch (error) {
      const fault = databaseFault(error, path);
      if (fault !== null) throw new FaultError(fault);
      throw error;
    }
  };
  const keepYard = (yard: Yard) =>
    db.run(build.insertInto('yard').values(yard).onConflict((on) => on.column('id').doUpdateSet({ code: yard.code, name: yard.name, room: yard.room, minutes: yard.minutes })));
  const keepPaper = ({ kind, key, body }: Paper) =>
    body === null
      ? db.run(build.deleteFrom('paper').where('kind', '=', kind).where('key', '=', key))
      : db.run(build.insertInto('paper').values({ kind, key, body }).onConflict((on) => on.columns(['kind', 'key']).doUpdateSet({ body })));
  const keepStates = (rows: Iterable<Tables['colony']>) =>
    db.many(
      rows,
      (row) => build.insertInto('colony').values(row).onConflict((on) => on.column('id').doUpdateSet((excluded) => ({
        label: excluded.ref('excluded.label'), yard_id: excluded.ref('excluded.yard_id'), origin: excluded.ref('excluded.origin'), start_day: excluded.ref('excluded.start_day'),
        end_day: excluded.ref('excluded.end_day'), how: excluded.ref('excluded.how'), state: excluded.ref('excluded.state'),
      }))),
      (row) => [row.id, row.label, row.yard_id, row.origin, row.start_day, row.end_day, row.how, row.state],
    );
  const link = (entries: Iterable<Entry>) => {
    const links = function* () {
      for (const entry of entries) for (const touch of rulesOf(entry.kind).touches(entry.body)) yield { colony_id: touch.colony as number, entry_id: entry.id as number };
    };
    db.many(links(), (row) => build.insertInto('colony_entry').values(row), (row) => [row.colony_id, row.entry_id]);
  };
  const standingOf = (colonies: readonly ColonyId[], until?: Day) => {
    const found = new Map<ColonyId, Entry[]>(colonies.map((id) => [id, []]));
    for (const part of inParts(colonies)) {
      const rows = db.all(
        (until === undefined ? standing : standing.where('entry.day', '<=', until)).innerJoin('colony_entry', 'colony_entry.entry_id', 'entry.id').where('colony_entry.colony_id', 'in', part)
          .select(['entry.id', 'entry.day', 'entry.place', 'entry.kind', 'entry.body', 'colony_entry.colony_id']).orderBy('entry.day').orderBy('entry.place'),
      );
      for (const row of rows) found.get(row.colony_id as ColonyId)?.push(entryFromRow(row));
    }
    return found;
  };

  const enter = (changes: readonly Change[], expected: number) => {
    if (position() !== expected) throw new FaultError(refuse('moved-on', 'The book was changed meanwhile, so nothing was entered.', { mend: 'Look at it again and repeat the entry.' }));
    return changes.map((change) => {
      const gesture = db.run(build.insertInto('gesture').values({ at: change.at, kind: change.kind, title: change.title, undoes: change.undoes })).lastInsertRowid;
      for (const yard of change.yards) keepYard(yard);
      db.many(
        change.entries,
        ({ entry, replaces }) => build.insertInto('entry').values(entryToRow(entry, gesture, replaces)),
        ({ entry, replaces }) => Object.values(entryToRow(entry, gesture, replaces)),
      );
      link(change.entries.map(({ entry }) => entry));
      for (const mark of change.marks) {
        const id = db.run(build.insertInto('mark').values({ entry_id: mark.entry, gesture_id: gesture, what: mark.what, reason: mark.reason })).lastInsertRowid;
        db.run(build.deleteFrom('struck').where('entry_id', '=', mark.entry));
        if (mark.what === 'strike') db.run(build.insertInto('struck').values({ entry_id: mark.entry, mark_id: id }));
      }
      for (const id of change.vanished) db.run(build.deleteFrom('colony').where('id', '=', id));
      keepStates(change.states.map(colonyToRow));
      for (const paper of typeof change.papers === 'function' ? change.papers(gesture as GestureId) : (change.papers ?? [])) keepPaper(paper);
      return { gesture: gesture as GestureId, position: advance() };
    });
  };

  const store: Store = {
    position: async () => position(),
    settings: async () => new Map(db.all(build.selectFrom('meta').selectAll()).map((row) => [row.key, row.value])),
    keepSettings: async (values) => keepWhole(() => {
      for (const [key, value] of values) keepMeta(key, value);
      advance();
    }),
    yards: async () => db.all(build.selectFrom('yard').selectAll().orderBy('code')).map((row) => ({ ...row, id: row.id as YardId })),
    keepYard: async (yard) => keepWhole(() => {
      keepYard(yard);
      advance();
    }),
    ...yardStore(db, (act) => keepWhole(() => {
      act();
      advance();
    })),
    nextIds: async () => {
      const top = (table: 'entry' | 'yard') => (db.first(build.selectFrom(table).select((eb) => eb.fn.max('id').as('top')))?.top ?? 0) + 1;
      const colony = db.first(build.selectFrom('colony_entry').select((eb) => eb.fn.max('colony_id').as('top')));
      return { entry: top('entry'), colony: (colony?.top ?? 0) + 1, yard: top('yard') };
    },
    counts: async (until) => {
      const key = `${position()} ${until ?? ''}`;
      const known = counted.get(key);
      if (known !== undefined) return known;
      const number = (query: Compilable<{ count: number }>) => db.first(query)?.count ?? 0;
      const [entries, marked] = [build.selectFrom('entry'), build.selectFrom('struck').innerJoin('entry', 'entry.id', 'struck.entry_id')];
      const all = number((until === undefined ? entries : entries.where('day', '<=', until)).select((eb) => eb.fn.countAll<number>().as('count')));
      const struck = number((until === undefined ? marked : marked.where('entry.day', '<=', until)).select((eb) => eb.fn.countAll<number>().as('count')));
      const within = until === undefined ? standing : standing.where('day', '<=', until);
      const dayAt = (order: 'asc' | 'desc') => (db.first(within.select('day').orderBy('day', order).limit(1))?.day ?? null) as Day | null;
      const found = {
        entries: all - struck, firstDay: dayAt('asc'), lastDay: dayAt('desc'),
        living: number(build.selectFrom('colony').where('how', '=', 'alive').select((eb) => eb.fn.countAll<number>().as('count'))),
      };
      if (counted.size >= mostCounted) counted.clear();
      counted.set(key, found);
      return found;
    },
    states: async (ids) => {
      const all = build.selectFrom('colony').select(['id', 'state']).orderBy('id');
      if (ids !== undefined) return inParts(ids).flatMap((part) => db.all(all.where('id', 'in', part))).map(colonyFromRow);
      const found: ColonyState[] = [];
      for (let rows = db.all(all.limit(statesAtOnce)); rows.length > 0; ) {
        for (const row of rows) found.push(colonyFromRow(row));
        await breathe();
        rows = db.all(all.where('id', '>', rows.at(-1)?.id ?? 0).limit(statesAtOnce));
      }
      return found;
    },
    statesByLabel: async (labels) =>
      inParts(labels).flatMap((part) => db.all(build.selectFrom('colony').select('state').where('label', 'in', part).orderBy('id'))).map(colonyFromRow),
    labels: async () => {
      const labels = new Map(db.all(build.selectFrom('colony').select(['id', 'label'])).map((row) => [row.id as ColonyId, row.label]));
      // A colony whose first entry is struck has no state, but its struck entries still name it.
      for (const row of db.all(build.selectFrom('entry').innerJoin('struck', 'struck.entry_id', 'entry.id').where('kind', 'in', ['install', 'split']).orderBy('id').selectAll('entry'))) {
        const entry = entryFromRow(row);
        const made = entry.kind === 'install' ? entry.body.colony : entry.kind === 'split' ? entry.body.child : null;
        if (made !== null && !labels.has(made) && 'label' in entry.body) labels.set(made, entry.body.label);
      }
      return labels;
    },
    entriesOf: async (colonies, until) => {
      const found = new Map<ColonyId, Entry[]>();
      for (const part of inParts(colonies, coloniesAtOnce)) {
        for (const [id, entries] of standingOf(part, until)) found.set(id, entries);
        await breathe();
      }
      return found;
    },
    storyOf: async (colony) => {
      const rows = db.all(withMarks.innerJoin('colony_entry', 'colony_entry.entry_id', 'entry.id').where('colony_entry.colony_id', '=', colony).orderBy('entry.day').orderBy('entry.place').orderBy('entry.id'));
      return rows.map(storedFromRow);
    },
    entries: async (query) => queried(db, query, breathe),
    gestures: async () => {
      const last = db.first(build.selectFrom('gesture').select((eb) => eb.fn.max('id').as('top')))?.top ?? 0;
      while (acts.upTo < last) {
        const upTo = Math.min(acts.upTo + actsAtOnce, last);
        const rows = db.all(
          build.selectFrom('gesture').leftJoin('entry', 'entry.gesture_id', 'gesture.id').where('gesture.id', '>', acts.upTo).where('gesture.id', '<=', upTo).groupBy('gesture.id').orderBy('gesture.id').select(gestureColumns),
        );
        acts.known.push(...rows.map(gestureFromRow));
        acts.upTo = upTo;
        await breathe();
      }
      return [...acts.known];
    },
    gesturesUntil: async (until) => {
      const within = build.selectFrom('gesture').innerJoin('entry', 'entry.gesture_id', 'gesture.id').where('entry.day', '<=', until);
      const standingIn = within.where(({ not, exists, selectFrom }) => not(exists(selectFrom('struck').select('struck.entry_id').whereRef('struck.entry_id', '=', 'entry.id'))));
      return db.all(standingIn.groupBy('gesture.id').orderBy('gesture.id').select(gestureColumns)).map(gestureFromRow);
    },
    marksOf: async (gesture) =>
      db.all(build.selectFrom('mark').select(['entry_id', 'what', 'reason']).where('gesture_id', '=', gesture).orderBy('id'))
        .map((row): Mark => ({ entry: row.entry_id as EntryId, what: row.what as Mark['what'], reason: row.reason })),
    commit: async (change, expected) => {
      const [done] = whole(() => enter([change], expected));
      if (done === undefined) throw new Error('a change was kept without a gesture');
      note(expected, change.states, change.vanished);
      return done;
    },
    commitAll: async (changes, expected) => {
      whole(() => enter(changes, expected));
      latest = [];
    },
    changesSince: async (known) => {
      const later = latest.filter((one) => one.from >= known);
      const joined = later.every((one, at) => one.from === known + at) && known + later.length === position();
      return joined ? { states: later.flatMap((one) => one.states), vanished: later.flatMap((one) => one.vanished) } : null;
    },
    drafts: {
      keep: async (key, body) => void whole(() => db.run(build.insertInto('draft').values({ key, body }).onConflict((on) => on.column('key').doUpdateSet({ body })))),
      fetch: async (key) => db.first(build.selectFrom('draft').select('body').where('key', '=', key))?.body ?? null,
      drop: async (key) => void whole(() => db.run(build.deleteFrom('draft').where('key', '=', key))),
    },
    papers: async (kind) => new Map(db.all(build.selectFrom('paper').select(['key', 'body']).where('kind', '=', kind).orderBy('key')).map((row) => [row.key, row.body])),
    keepPapers: async (papers) => keepWhole(() => {
      for (const paper of papers) keepPaper(paper);
      advance();
    }),
    rules: async () => new Map(db.all(build.selectFrom('house_rule').selectAll()).map((row) => [row.key, JSON.parse(row.value) as number | string])),
    keepRule: async (key, value) => keepWhole(() => {
      if (value === null) db.run(build.deleteFrom('house_rule').where('key', '=', key));
      else db.run(build.insertInto('house_rule').values({ key, value: JSON.stringify(value) }).onConflict((on) => on.column('key').doUpdateSet({ value: JSON.stringify(value) })));
      advance();
    }),
    rebuild: async () => whole(() => {
      counted.clear();
      keepMeta('fold', String(foldVersion));
      for (const table of ['struck', 'colony_entry', 'colony'] as const) db.run(build.deleteFrom(table));
      for (const mark of db.all(build.selectFrom('mark').select(['id', 'entry_id', 'what']).orderBy('id'))) {
        db.run(build.deleteFrom('struck').where('entry_id', '=', mark.entry_id));
        if (mark.what === 'strike') db.run(build.insertInto('struck').values({ entry_id: mark.entry_id, mark_id: mark.id }));
      }
      link(db.all(build.selectFrom('entry').select(['id', 'day', 'place', 'kind', 'body']).orderBy('id')).map(entryFromRow));
      const colonies = db.all(build.selectFrom('colony_entry').select('colony_id').distinct().orderBy('colony_id')).map((row) => row.colony_id as ColonyId);
      const folded = refold(standingOf(colonies), () => null);
      const [refused] = folded.refused;
      if (refused !== undefined) throw new Error(`entry ${refused.entry.id} contradicts the journal: ${refused.refusal.sentence}`);
      keepStates([...folded.states.values()].filter((state) => state !== null).toSorted((a, b) => a.id - b.id).map(colonyToRow));
    }),
    projectionText: async () => {
      const rows: string[] = [];
      for (const table of projections) {
        const order = table === 'colony' ? 'id' : table === 'struck' ? 'entry_id' : 'colony_id';
        const query = build.selectFrom(table).selectAll().orderBy(sql.ref(order)) as Compilable<object>;
        for (const row of db.all(table === 'colony_entry' ? (build.selectFrom(table).selectAll().orderBy('colony_id').orderBy('entry_id') as Compilable<object>) : query)) rows.push(`${table}\t${JSON.stringify(row)}`);
      }
      return rows.join('\n');
    },
    findings: async () => {
      const integrity = (database.pragma('integrity_check') as { integrity_check: string }[]).map((row) => row.integrity_check).filter((line) => line !== 'ok');
      const references = (database.pragma('foreign_key_check') as { table: string; rowid: number }[]).map((row) => `${row.table} row ${row.rowid} refers to something that is not there`);
      return [...integrity, ...references];
    },
    close: async () => closeDatabase(database),
  };
  return store;
}

/** An act with its entries, as they are joined to it. */
const gestureColumns = (eb: ExpressionBuilder<Tables, 'gesture' | 'entry'>) =>
  ['gesture.id', 'gesture.at', 'gesture.kind', 'gesture.title', 'gesture.undoes', eb.fn.count<number>('entry.id').as('entries'), eb.fn.min('entry.day').as('first'), eb.fn.max('entry.day').as('last')] as const;

function gestureFromRow(row: { id: number; at: string; kind: string; title: string; undoes: number | null; entries: number; first: string | null; last: string | null }): Gesture {
  return {
    id: row.id as GestureId, at: row.at, kind: row.kind as GestureKind, title: row.title, undoes: row.undoes as GestureId | null, entries: row.entries,
    firstDay: row.first as Day | null, lastDay: row.last as Day | null,
  };
}

async function queried(db: SqliteRunner, query: EntryQuery, breathe: () => Promise<void>): Promise<StoredEntry[]> {
  let rows = withMarks.orderBy('entry.day').orderBy('entry.place').orderBy('entry.id');
  if (query.kinds !== undefined) rows = rows.where('entry.kind', 'in', query.kinds);
  if (query.ofNoColony === true) rows = rows.where(({ not, exists, selectFrom }) => not(exists(selectFrom('colony_entry').select('colony_entry.entry_id').whereRef('colony_entry.entry_id', '=', 'entry.id'))));
  if (query.gesture !== undefined) rows = rows.where('entry.gesture_id', '=', query.gesture);
  if (query.after !== undefined) rows = rows.where('entry.id', '>', query.after);
  if (query.upTo !== undefined) rows = rows.where('entry.id', '<=', query.upTo);
  const few = query.gesture ?? query.after ?? query.upTo ?? query.replacing ?? query.ids;
  if (few === undefined) return inStretches(db, query, (from, until) => rows.where('entry.day', '>=', from).where('entry.day', '<=', until), breathe);
  if (query.from !== undefined) rows = rows.where('entry.day', '>=', query.from);
  if (query.until !== undefined) rows = rows.where('entry.day', '<=', query.until);
  if (query.replacing !== undefined) return inParts(query.replacing).flatMap((part) => db.all(rows.where('entry.replaces', 'in', part))).map(storedFromRow);
  if (query.ids === undefined) return db.all(rows).map(storedFromRow);
  return inParts(query.ids).flatMap((part) => db.all(rows.where('entry.id', 'in', part))).map(storedFromRow);
}

type StoredRow = Parameters<typeof storedFromRow>[0];

/** In the order of days, some of them at a time: as many as hold a slice's worth of entries. */
async function inStretches(db: SqliteRunner, { from, until }: EntryQuery, rowsOf: (from: Day, until: Day) => Compilable<StoredRow>, breathe: () => Promise<void>): Promise<StoredEntry[]> {
  const days = db.first(build.selectFrom('entry').select((eb) => [eb.fn.min('day').as('first')])) as { first: Day | null } | undefined;
  const ends = db.first(build.selectFrom('entry').select((eb) => [eb.fn.max('day').as('last')])) as { last: Day | null } | undefined;
  const [first, last] = [days?.first ?? null, ends?.last ?? null];
  if (first === null || last === null) return [];
  const end = until !== undefined && until < last ? until : last;
  const found: StoredEntry[] = [];
  let stretch = firstStretch;
  for (let day = from !== undefined && from > first ? from : first; day <= end; ) {
    const evening = addDays(day, stretch - 1);
    const rows = db.all(rowsOf(day, evening < end ? evening : end));
    for (const row of rows) found.push(storedFromRow(row));
    day = addDays(day, stretch);
    stretch = rows.length > entriesAtOnce ? Math.max(1, Math.floor(stretch / 2)) : rows.length < entriesAtOnce / 4 ? Math.min(longestStretch, stretch * 4) : stretch;
    await breathe();
  }
  return found;
}

function atOnce(): Promise<void> {
  return Promise.resolve();
}
