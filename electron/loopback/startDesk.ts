import { booksFolder, dataFolder } from '#electron/folders.ts';
import { forkKeeper } from '#electron/keeper/forkKeeper.ts';
import { createKeeperClient, type KeeperClient } from '#electron/keeper/keeperClient.ts';
import { keeperArguments } from '#electron/keeper/keeperProcess.ts';
import { logFile } from '#electron/keeper/logFile.ts';
import { program } from '#electron/program.ts';
import { surroundings } from '#electron/surroundings.ts';
import { startLoopback, type Loopback } from './loopback.ts';

export interface LoopbackDesk {
  readonly loopback: Loopback;
  readonly keeper: KeeperClient;
  /** The program's own folder. */
  readonly data: string;
  /** Stops serving, closes the book, ends the keeper. */
  close(): Promise<void>;
}

/** A keeper (this Node running `script`) with the loopback host in front of it, in the usual folders. */
export async function startLoopbackDesk(options: { script: string; pages: string }): Promise<LoopbackDesk> {
  const around = surroundings();
  const data = dataFolder(around);
  const log = logFile(data);
  const argv = keeperArguments({ folder: booksFolder(around), data, program });
  const keeper = createKeeperClient(() => forkKeeper(options.script, argv, process.execPath), log);
  const loopback = await startLoopback({ pages: options.pages, call: (name, input) => keeper.call(name, input), log });
  return {
    loopback,
    keeper,
    data,
    close: async () => {
      await loopback.close();
      await keeper.close();
    },
  };
}
