import { randomUUID } from 'node:crypto';
import { parseArgs } from 'node:util';
import { createDesk } from '#core/desk/desk.ts';
import { refuse } from '#shared/faults.ts';
import { readClock, readMoment } from './clock.ts';
import type { KeeperPort } from './keeperPort.ts';
import { logFile } from './logFile.ts';

/** Answers the host's calls from a desk until told to close or left alone. Arguments: `--folder`, `--data`, `--program`. */
export function serveDesk(port: KeeperPort, argv: readonly string[]): void {
  const { values } = parseArgs({
    args: [...argv],
    options: { folder: { type: 'string' }, data: { type: 'string' }, program: { type: 'string' } },
  });
  const { folder, data, program } = values;
  if (folder === undefined || data === undefined || program === undefined) {
    throw new TypeError('the keeper needs --folder, --data and --program');
  }
  const log = logFile(data);
  const desk = createDesk({ folder, program, now: readClock, moment: readMoment, log });

  let closing: Promise<void> | null = null;
  const close = () => (closing ??= desk.close().catch((error: unknown) => log(`closing failed: ${inFull(error)}`)));

  port.onMessage((message) => {
    if ('close' in message) {
      void close().then(() => port.send({ closed: true }, () => process.exit(0)));
      return;
    }
    desk.call(message.name, message.input).then(
      (answer) => port.send({ id: message.id, answer }),
      (error: unknown) => {
        const id = randomUUID().slice(0, 8);
        log(`defect ${id} in ${String(message.name)}: ${inFull(error)}`);
        port.send({
          id: message.id,
          answer: refuse('defect', `Something in the program went wrong (note ${id} in its log). The book is as it was.`),
        });
      },
    );
  });
  port.onGone(() => void close().then(() => process.exit(0)));
  process.on('SIGTERM', () => void close().then(() => process.exit(0)));
  // Ctrl+C reaches the whole group; the host hears it too and closes this process in order.
  process.on('SIGINT', () => undefined);
  process.on('uncaughtException', (error) => {
    log(`defect ${randomUUID().slice(0, 8)} outside a call: ${inFull(error)}`);
    process.exit(70);
  });
}

function inFull(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
