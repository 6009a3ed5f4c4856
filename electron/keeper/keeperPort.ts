import type { FromKeeper, ToKeeper } from './messages.ts';

/** The keeper's end of the line to the process that started it. */
export interface KeeperPort {
  send(message: FromKeeper, sent?: () => void): void;
  onMessage(listener: (message: ToKeeper) => void): void;
  /** The host is gone: nobody will ask any more. */
  onGone(listener: () => void): void;
}

/** The part of Electron's utility process that is used. */
interface ParentPort {
  postMessage(message: unknown): void;
  on(event: 'message', listener: (event: { data: unknown }) => void): void;
}

/** The line to the host, whichever kind of process this is; null when nobody started it as a keeper. */
export function keeperPort(): KeeperPort | null {
  const parent = (process as { parentPort?: ParentPort }).parentPort;
  if (parent !== undefined) {
    return {
      send: (message, sent) => {
        parent.postMessage(message);
        sent?.();
      },
      onMessage: (listener) => parent.on('message', (event) => listener(event.data as ToKeeper)),
      // A utility process ends with its parent.
      onGone: () => undefined,
    };
  }
  if (typeof process.send !== 'function') return null;
  return {
    // The host may die between two messages; there is nobody left to tell, and `disconnect` follows.
    send: (message, sent) => void process.send?.(message, undefined, undefined, () => sent?.()),
    onMessage: (listener) => process.on('message', (message) => listener(message as ToKeeper)),
    onGone: (listener) => process.on('disconnect', listener),
  };
}
