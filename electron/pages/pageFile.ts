/** What the built pages consist of, by file ending; anything else is not served. */
const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json; charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  woff2: 'font/woff2',
  woff: 'font/woff',
  wasm: 'application/wasm',
};

export interface PageFile {
  /** Parts of the path below the renderer folder, each a plain file or folder name. */
  readonly parts: readonly string[];
  readonly type: string;
}

const plainName = /^[A-Za-z0-9_-][A-Za-z0-9._-]*$/;

/**
 * The built file that a request names, or null if it names none. Both hosts ask here, with the path exactly as it
 * arrived. The build writes plain names only, so nothing is decoded: a percent sign, a backslash, a NUL, an empty part
 * or a part that starts with a dot is refused, and with them every way out of the folder.
 */
export function pageFile(path: string): PageFile | null {
  if (path === '/') return pageFile('/index.html');
  if (!path.startsWith('/') || path.length > 300) return null;
  const parts = path.slice(1).split('/');
  if (!parts.every((part) => plainName.test(part))) return null;
  const last = parts.at(-1) ?? '';
  const ending = last.slice(last.lastIndexOf('.') + 1).toLowerCase();
  const type = last.includes('.') && Object.hasOwn(types, ending) ? types[ending] : undefined;
  return type === undefined ? null : { parts, type };
}
