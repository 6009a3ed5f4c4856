import { join } from 'node:path';
import { utilityProcess } from 'electron';
import { forkKeeper } from '#electron/keeper/forkKeeper.ts';
import { keeperArguments, type KeeperProcess, type KeeperSettings, type StartKeeper } from '#electron/keeper/keeperProcess.ts';
import type { FromKeeper } from '#electron/keeper/messages.ts';

/** Set when the program is built: true only in trial builds, for runtimes whose own Node is too old for SQLite. */
declare const __OUTYARD_EXTERNAL_NODE__: boolean;

export function keeperStarter(settings: KeeperSettings): StartKeeper {
  const script = join(__dirname, 'keeper.cjs');
  const argv = keeperArguments(settings);
  if (__OUTYARD_EXTERNAL_NODE__) {
    const node = process.env['OUTYARD_KEEPER_NODE'];
    if (node) return () => forkKeeper(script, argv, node);
  }
  return () => utilityKeeper(script, argv);
}

function utilityKeeper(script: string, argv: string[]): KeeperProcess {
  const child = utilityProcess.fork(script, argv, { serviceName: 'Outyard keeper', stdio: 'inherit' });
  return {
    send: (message) => child.postMessage(message),
    onMessage: (listener) => child.on('message', (message) => listener(message as FromKeeper)),
    onExit: (listener) => child.once('exit', listener),
    kill: () => void child.kill(),
  };
}
