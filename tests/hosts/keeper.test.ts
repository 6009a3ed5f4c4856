import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import { forkKeeper } from '#electron/keeper/forkKeeper.ts';
import { createKeeperClient, type KeeperClient } from '#electron/keeper/keeperClient.ts';
import { keeperArguments, type KeeperProcess } from '#electron/keeper/keeperProcess.ts';
import { program } from '#electron/program.ts';
import type { BookStatus } from '#shared/contract/book.ts';
import type { Answer } from '#shared/faults.ts';
import { csv, faultOf, fileOf, valueOf } from './deskSuite.ts';
import { trialFolder } from './trialFolder.ts';

const script = fileURLToPath(new URL('../../electron/keeper/keeper.ts', import.meta.url));
const ends: (() => Promise<void> | void)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).toReversed()) await end();
});

/** A client over real keepers, and every keeper it started. */
function keeperAt(file: string = script): { client: KeeperClient; started: KeeperProcess[]; logged: string[] } {
  const trial = trialFolder();
  const argv = keeperArguments({ folder: trial.folder, data: `${trial.folder}/program`, program });
  const started: KeeperProcess[] = [];
  const logged: string[] = [];
  const client = createKeeperClient(
    () => {
      const process_ = forkKeeper(file, argv, process.execPath);
      started.push(process_);
      return process_;
    },
    (line) => logged.push(line),
  );
  ends.push(trial.remove, () => client.close());
  return { client, started, logged };
}

const status = (answer: Promise<Answer<unknown>>) => valueOf(answer) as Promise<BookStatus>;

test('a keeper killed in the middle of a call: the call is answered, the next one finds the same book', async () => {
  const { client, started, logged } = keeperAt();
  await valueOf(client.call('book.create', { name: 'Killed' }));
  await valueOf(client.call('yard.keep', { code: 'QY', name: 'Quarry', room: null, minutes: null }));
  await valueOf(client.call('journal.enter', { rows: [{ date: '2024-04-20', entry: 'install', yard: 'QY', colony: 'Q1', origin: 'package' }] }));

  // Large enough that it is surely still being read when the kill arrives.
  const notes = Array.from({ length: 60_000 }, (_, at) => ({ date: '2024-05-01', entry: 'note', yard: 'QY', note: `note ${at}` }));
  const file = fileOf('notes.csv', csv(notes));
  const reading = client.call('import.preview', { file });
  const writing = client.call('journal.enter', { rows: [{ date: '2024-05-02', entry: 'note', yard: 'QY', note: 'behind it' }] });
  started[0]?.kill();
  const [read, wrote] = await Promise.all([faultOf(reading), faultOf(writing)]);
  expect([read.code, wrote.code]).toEqual(['defect', 'defect']);
  expect(read.sentence).toContain('Everything that was saved is safe');
  expect(wrote.sentence).toContain('saved whole or not at all');
  expect(wrote.mend).toContain('last entries');

  const after = await status(client.call('book.status', {}));
  expect(started).toHaveLength(2);
  expect(after.book).toMatchObject({ name: 'Killed', living: 1, entries: 1 });
  expect(await valueOf(client.call('book.check', {}))).toMatchObject({ sound: true });
  expect(logged).toEqual(['the keeper stopped by itself']);
});

test('a keeper killed while idle is back at the next call', async () => {
  const { client, started } = keeperAt();
  await status(client.call('book.status', {}));
  started[0]?.kill();
  await expect.poll(() => started.length).toBe(2);
  expect((await status(client.call('book.status', {}))).book).toBeNull();
});

test('a keeper that cannot start is not started over and over', async () => {
  const { client, started } = keeperAt(fileURLToPath(new URL('absent.ts', import.meta.url)));
  expect((await faultOf(client.call('book.status', {}))).code).toBe('defect');
  expect(started).toHaveLength(1);
  expect((await faultOf(client.call('book.status', {}))).code).toBe('defect');
  expect(started).toHaveLength(2);
});

test('after closing, calls are refused and nothing runs', async () => {
  const { client, started } = keeperAt();
  await status(client.call('book.status', {}));
  const gone = new Promise<void>((resolve) => started[0]?.onExit(resolve));
  await client.close();
  await gone;
  expect((await faultOf(client.call('book.status', {}))).code).toBe('refused');
  expect(started).toHaveLength(1);
});

test('a keeper ends when its host is killed', async () => {
  const trial = trialFolder();
  ends.push(trial.remove);
  const argv = keeperArguments({ folder: trial.folder, data: `${trial.folder}/program`, program });
  const host = spawn(process.execPath, [fileURLToPath(new URL('hostThatDies.ts', import.meta.url)), script, ...argv], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const [told] = (await once(host.stdout, 'data')) as [Buffer];
  const keeper = Number(told.toString());
  expect(isRunning(keeper)).toBe(true);
  host.kill('SIGKILL');
  await expect.poll(() => isRunning(keeper), { timeout: 10_000 }).toBe(false);
});

test('the keeper’s file started by hand says what to do instead', () => {
  const run = spawnSync(process.execPath, [script], { encoding: 'utf8', timeout: 20_000 });
  expect(run.stderr).toContain('npm start');
  expect(run.status).toBe(64);
});

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}
