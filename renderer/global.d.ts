/** The only bridge out of the window, set by the preload script; absent in a plain browser. */
interface OutyardBridge {
  call(name: string, input: unknown): Promise<unknown>;
}

interface Window {
  readonly outyard?: OutyardBridge;
}
