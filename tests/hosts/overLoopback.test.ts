import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll } from 'vitest';
import type { DeskClient } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/faults.ts';
import { forkKeeper } from '#electron/keeper/forkKeeper.ts';
import { createKeeperClient, type KeeperClient } from '#electron/keeper/keeperClient.ts';
import { keeperArguments } from '#electron/keeper/keeperProcess.ts';
import { startLoopback, type Loopback } from '#electron/loopback/loopback.ts';
import { program } from '#electron/program.ts';
import { deskSuite } from './deskSuite.ts';
import { httpAsk, openSession } from './httpAsk.ts';
import { trialFolder } from './trialFolder.ts';

const script = fileURLToPath(new URL('../../electron/keeper/keeper.ts', import.meta.url));
const trial = trialFolder();
let keeper: KeeperClient;
let loopback: Loopback;
let session: { port: number; origin: string; cookie: string };

beforeAll(async () => {
  const argv = keeperArguments({ folder: trial.folder, data: `${trial.folder}/program`, program });
  keeper = createKeeperClient(() => forkKeeper(script, argv, process.execPath), () => undefined);
  loopback = await startLoopback({ pages: trial.folder, call: (name, input) => keeper.call(name, input), log: () => undefined });
  session = await openSession(loopback.openingAddress('once'));
});
afterAll(async () => {
  await loopback.close();
  await keeper.close();
  trial.remove();
});

const post = async (name: string, input: unknown): Promise<Answer<unknown>> => {
  const headers = { cookie: session.cookie, origin: session.origin, 'content-type': 'application/json' };
  const answer = await httpAsk(session.port, 'POST', `/desk/${name}`, headers, JSON.stringify(input));
  return JSON.parse(answer.text) as Answer<unknown>;
};

deskSuite(() => post as DeskClient['call']);
