import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { bookVersion, migrate, migrations, type Migration } from '#core/book/migrate.ts';
import { sha256 } from '#tests/journal/trialBook.ts';

/** A published step is never changed: books that have it would not get the change. */
const published: readonly [number, string, string][] = [
  [1, 'journal', '3b19d09a796a1ab0094874f44c651a27eac8a650081a8dc21719b398d6a36fff'],
  [2, 'yards', 'e91e44926c960f2eb3209471635507c68e604273bca163e9c5028fc445bbfcc1'],
  [3, 'papers', '1a8604ec1feb3fcdb88a6844b852bb741a131f4a5df9550d720a64c09888922d'],
];

test('published migrations are what they were', () => {
  expect(migrations.map(({ number, name, statements }) => [number, name, sha256(JSON.stringify(statements))])).toEqual(published);
  expect(bookVersion).toBe(published.length);
});

const schema = (database: Sqlite.Database) => JSON.stringify(database.prepare('SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY name').all());
const version = (database: Sqlite.Database) => database.pragma('user_version', { simple: true });

test('a first migration cut off after any statement leaves an empty database, and can be run again', () => {
  const whole = new Sqlite(':memory:');
  migrate(whole);
  for (const step of migrations) {
    const earlier = migrations.filter(({ number }) => number < step.number);
    for (let cut = 0; cut <= step.statements.length; cut += 1) {
      const database = new Sqlite(':memory:');
      migrate(database, earlier);
      const before = [schema(database), version(database)];
      const broken: Migration = { ...step, statements: [...step.statements.slice(0, cut), 'SELECT no_such_thing()'] };
      expect(() => migrate(database, [...earlier, broken])).toThrow('no_such_thing');
      expect([schema(database), version(database), database.inTransaction]).toEqual([...before, false]);
      migrate(database);
      expect([schema(database), version(database)]).toEqual([schema(whole), bookVersion]);
      database.close();
    }
  }
});

test('a later step that fails leaves the version before it whole', () => {
  const database = new Sqlite(':memory:');
  migrate(database);
  const before = schema(database);
  const next = { number: bookVersion + 1, name: 'next', statements: ['CREATE TABLE later (id INTEGER PRIMARY KEY) STRICT', "INSERT INTO colony_entry VALUES (1, 999)", 'DROP TABLE nowhere'] };
  database.pragma('foreign_keys = OFF');
  expect(() => migrate(database, [...migrations, next])).toThrow('nowhere');
  expect(() => migrate(database, [...migrations, { ...next, statements: next.statements.slice(0, 2) }])).toThrow('references broken');
  expect([schema(database), version(database)]).toEqual([before, bookVersion]);
  migrate(database, [...migrations, { ...next, statements: next.statements.slice(0, 1) }]);
  expect(version(database)).toBe(bookVersion + 1);
  expect(() => migrate(database, [{ ...next, number: bookVersion + 3 }])).toThrow('does not follow');
});

test('a book of the first version keeps every row, and its yards have details and an order to be filled', () => {
  const database = new Sqlite(':memory:');
  migrate(database, migrations.slice(0, 1));
  database.exec("INSERT INTO yard VALUES (1, 'LB', 'Larch Bend', 12, 35), (2, 'NS', 'North Slope', NULL, NULL)");
  database.exec("INSERT INTO gesture VALUES (1, '2025-04-24 21:00', 'enter', 'Package hived', NULL)");
  database.exec(`INSERT INTO entry VALUES (1, 1, '2025-04-24', 1, 'install', '{"colony":1}', NULL)`);
  database.exec("INSERT INTO colony VALUES (1, 'LB-1', 1, 'package', '2025-04-24', NULL, 'alive', '{}')");
  const tables = ['yard', 'gesture', 'entry', 'mark', 'colony', 'colony_entry', 'struck', 'draft', 'house_rule', 'meta'];
  const rows = () => tables.map((table) => database.prepare(`SELECT * FROM ${table}`).all());
  const before = rows();
  migrate(database);
  expect(rows()).toEqual(before);
  database.exec("INSERT INTO yard_detail VALUES (1, 'Gate code at the farm', NULL, 'OV-117', '2027-03-31'), (2, NULL, NULL, NULL, NULL)");
  expect(() => database.exec("INSERT INTO yard_detail VALUES (3, NULL, NULL, NULL, NULL)")).toThrow('FOREIGN KEY');
  expect(() => database.exec("UPDATE yard_detail SET renewal = '2027-02-30'")).toThrow('yard_renewal');
  database.exec('INSERT INTO stand VALUES (1, 1, 0)');
  expect(() => database.exec('INSERT INTO stand VALUES (1, 1, 1)')).toThrow('UNIQUE');
  expect(() => database.exec('INSERT INTO stand VALUES (2, 1, -1)')).toThrow('stand_place');
});

test('a book of the second version keeps its yards and gets a place for papers', () => {
  const database = new Sqlite(':memory:');
  migrate(database, migrations.slice(0, 2));
  database.exec("INSERT INTO yard VALUES (1, 'LB', 'Larch Bend', 12, 35)");
  database.exec("INSERT INTO yard_detail VALUES (1, NULL, 'wet in March', NULL, NULL)");
  database.exec('INSERT INTO stand VALUES (1, 4, 0)');
  const rows = () => ['yard', 'yard_detail', 'stand'].map((table) => database.prepare(`SELECT * FROM ${table}`).all());
  const before = rows();
  migrate(database);
  expect(rows()).toEqual(before);
  database.exec(`INSERT INTO paper VALUES ('season note', '2025', '"less syrup"')`);
  expect(() => database.exec(`INSERT INTO paper VALUES ('season note', '2026', 'less syrup')`)).toThrow('paper_body');
  expect(() => database.exec(`INSERT INTO paper VALUES ('season note', '2025', '1')`)).toThrow('UNIQUE');
});

test('run again it changes nothing', () => {
  const database = new Sqlite(':memory:');
  migrate(database);
  const before = schema(database);
  migrate(database);
  expect(schema(database)).toBe(before);
});
