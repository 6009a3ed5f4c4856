import { ipcMain } from 'electron';
import { refuse } from '#shared/faults.ts';
import type { KeeperClient } from '#electron/keeper/keeperClient.ts';
import { isTrustedFrame } from '#electron/pages/appAddress.ts';

/** The other end of the preload's one function. The desk parses name and input; here only the asker is judged. */
export function connectBridge(keeper: KeeperClient): void {
  ipcMain.handle('desk', (event, name: unknown, input: unknown, ...surplus: unknown[]) => {
    if (!isTrustedFrame(event.senderFrame)) return refuse('refused', 'Only the program’s own pages may ask here.');
    if (surplus.length > 0) return refuse('bad-input', 'The desk takes one input.');
    return keeper.call(name, input);
  });
}
