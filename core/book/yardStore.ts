import type { ColonyId, YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { build, type SqliteRunner } from './sqliteRunner.ts';
import type { Store } from './store.ts';

/** The store's part about yards beyond the journal: their details, and the order their colonies stand in. */
export function yardStore(db: SqliteRunner, keepWhole: (act: () => void) => void): Pick<Store, 'yardDetails' | 'keepYardDetails' | 'stands' | 'keepStand'> {
  return {
    yardDetails: async () =>
      new Map(db.all(build.selectFrom('yard_detail').selectAll().orderBy('yard_id')).map(({ yard_id, access, notes, registration, renewal }) => [yard_id as YardId, { access, notes, registration, renewal: renewal as Day | null }])),
    keepYardDetails: async (yard, details) => keepWhole(() => {
      db.run(build.insertInto('yard_detail').values({ yard_id: yard, ...details }).onConflict((on) => on.column('yard_id').doUpdateSet({ ...details })));
    }),
    stands: async () => {
      const stands = new Map<YardId, ColonyId[]>();
      for (const row of db.all(build.selectFrom('stand').selectAll().orderBy('yard_id').orderBy('place').orderBy('colony_id'))) {
        const colonies = stands.get(row.yard_id as YardId);
        if (colonies === undefined) stands.set(row.yard_id as YardId, [row.colony_id as ColonyId]);
        else colonies.push(row.colony_id as ColonyId);
      }
      return stands;
    },
    keepStand: async (yard, colonies) => keepWhole(() => {
      db.run(build.deleteFrom('stand').where('yard_id', '=', yard));
      db.many(
        colonies.map((colony, place) => ({ yard_id: yard as number, colony_id: colony as number, place })),
        (row) => build.insertInto('stand').values(row),
        (row) => [row.yard_id, row.colony_id, row.place],
      );
    }),
  };
}
