import type { FromKeeper, ToKeeper } from './messages.ts';

/** A running keeper as its host sees it, whichever kind of process it is. */
export interface KeeperProcess {
  send(message: ToKeeper): void;
  onMessage(listener: (message: FromKeeper) => void): void;
  /** Called once, when it is gone for whatever reason. */
  onExit(listener: () => void): void;
  kill(): void;
}

export type StartKeeper = () => KeeperProcess;

/** What a keeper is told when it starts. */
export interface KeeperSettings {
  readonly folder: string;
  readonly data: string;
  readonly program: string;
}

export function keeperArguments(settings: KeeperSettings): string[] {
  return ['--folder', settings.folder, '--data', settings.data, '--program', settings.program];
}
