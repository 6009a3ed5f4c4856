/** The window's own address. Its `origin` is the text "null" by the URL standard, so scheme and host are compared. */
export const appScheme = 'app';
export const appHost = 'ui';
export const appStart = `${appScheme}://${appHost}/`;

/** Whether an address lies inside the program, by the URL parser and never by how the text begins. */
export function isAppAddress(address: string): boolean {
  const url = parsed(address);
  return url !== null && url.protocol === `${appScheme}:` && url.host === appHost && url.username === '' && url.password === '';
}

/** `URL.canParse` would do, but the oldest runtime that the window is tried on lacks it. */
function parsed(address: string): URL | null {
  try {
    return new URL(address);
  } catch {
    return null;
  }
}

/** The part of a frame that says who is asking; Electron's own type has far more. */
export interface AskingFrame {
  readonly url: string;
  readonly parent: unknown;
}

/** Whether a message comes from the program's own page in a top frame. A frame that is gone is not trusted. */
export function isTrustedFrame(frame: AskingFrame | null | undefined): boolean {
  return frame != null && frame.parent === null && isAppAddress(frame.url);
}
