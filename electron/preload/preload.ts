/** The only bridge between the page and the program: one function, and neither Electron's channels nor its events. */
import { contextBridge, ipcRenderer } from 'electron';

contextBridge.exposeInMainWorld('outyard', {
  call: (name: unknown, input: unknown): Promise<unknown> => ipcRenderer.invoke('desk', name, input),
});
