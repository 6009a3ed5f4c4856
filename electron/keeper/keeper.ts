/**
 * The process that holds the book. It alone opens the file, and it never draws; a host starts it, as Electron's utility
 * process or as a forked Node, and speaks `{id, name, input}` -> `{id, answer}` with it. The version check comes before
 * anything that loads SQLite: on an older Node that load ends the process without a word.
 */
import { keeperPort } from './keeperPort.ts';
import { unfitNode } from './nodeGuard.ts';

const port = keeperPort();
const unfit = unfitNode(process.versions.node);
if (port === null) {
  process.stderr.write('This file is the part of Outyard that holds the book; start the program with npm start.\n');
  process.exitCode = 64;
} else if (unfit !== null) {
  process.stderr.write(`${unfit}\n`);
  port.send({ unfit }, () => process.exit(78));
} else {
  const started = import('./serveDesk.ts');
  started.then(
    ({ serveDesk }) => serveDesk(port, process.argv.slice(2)),
    (error: unknown) => {
      process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`);
      process.exit(70);
    },
  );
}
