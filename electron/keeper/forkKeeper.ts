import { fork } from 'node:child_process';
import type { KeeperProcess } from './keeperProcess.ts';
import type { FromKeeper } from './messages.ts';

/** Starts the keeper as a Node process: `node` is the Node to run it with, `script` the keeper's file. */
export function forkKeeper(script: string, argv: readonly string[], node: string): KeeperProcess {
  const environment = { ...process.env };
  // Options meant for the host (inspectors, loaders) must not reach the process that holds the book.
  delete environment['NODE_OPTIONS'];
  const child = fork(script, [...argv], {
    execPath: node,
    execArgv: [],
    env: environment,
    serialization: 'advanced',
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
  return {
    // A send to a process that has just died fails by itself; `exit` answers what was pending.
    send: (message) => void (child.connected && child.send(message, () => undefined)),
    onMessage: (listener) => child.on('message', (message) => listener(message as FromKeeper)),
    onExit: (listener) => {
      let told = false;
      const tell = () => {
        if (!told) listener();
        told = true;
      };
      child.on('exit', tell);
      child.on('error', tell);
    },
    kill: () => void child.kill('SIGKILL'),
  };
}
