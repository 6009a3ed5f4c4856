import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { forkKeeper } from '#electron/keeper/forkKeeper.ts';
import { createKeeperClient, type KeeperClient } from '#electron/keeper/keeperClient.ts';
import { keeperArguments, type KeeperProcess } from '#electron/keeper/keeperProcess.ts';
import { startLoopback, type Loopback } from '#electron/loopback/loopback.ts';
import { program } from '#electron/program.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { trialFolder } from '../../hosts/trialFolder.ts';
import { builtPages } from '../machine.ts';
import { launchBrowser } from './browser.ts';

const script = fileURLToPath(new URL('../../../electron/keeper/keeper.ts', import.meta.url));

export interface KeeperWindow {
  page: Page;
  ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>>;
  /** Opens the window at an address within the program. */
  show(at: string): Promise<void>;
  /** Ends the process that holds the book in the middle of whatever it does (SIGKILL). The program starts another by itself. */
  killKeeper(): void;
  /** Kills keeper and window, starts both again on the same folder, opens the same book. */
  crashAndRestart(at: string): Promise<void>;
  close(): Promise<void>;
}

/** The real window over the real loopback host with the keeper as a process of its own, on the machine's own day. */
export async function openKeeperWindow(): Promise<KeeperWindow> {
  const pages = await builtPages();
  const browser: Browser = await launchBrowser();
  const trial = trialFolder();
  const argv = keeperArguments({ folder: trial.folder, data: `${trial.folder}/program`, program });
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' });
  let running: KeeperProcess | undefined;
  let keeper: KeeperClient;
  let loopback: Loopback;

  const raise = async () => {
    keeper = createKeeperClient(() => (running = forkKeeper(script, argv, process.execPath)), () => undefined);
    loopback = await startLoopback({ pages, call: (name, input) => keeper.call(name, input), log: () => undefined });
  };
  const ask: KeeperWindow['ask'] = async (name, input) => {
    const answer = await keeper.call(name, input);
    if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
    // The desk's own answer to that operation; its type follows from the contract.
    return answer.value as never;
  };
  const freshPage = async () => {
    const page = await context.newPage();
    page.setDefaultTimeout(30_000);
    return page;
  };

  await raise();
  const here: KeeperWindow = {
    page: await freshPage(),
    ask,
    show: async (at) => {
      await here.page.goto(loopback.openingAddress('once'));
      await here.page.goto(`${loopback.origin}/#${at}`);
      await here.page.locator('h1').waitFor();
    },
    killKeeper: () => running?.kill(),
    crashAndRestart: async (at) => {
      const { book } = await ask('book.status', {});
      running?.kill();
      await here.page.close({ runBeforeUnload: false });
      await loopback.close();
      await keeper.close();
      await raise();
      if (book !== null) await ask('book.open', { path: book.path });
      here.page = await freshPage();
      await here.show(at);
    },
    close: async () => {
      await browser.close();
      await loopback.close();
      await keeper.close();
      trial.remove();
    },
  };
  return here;
}
