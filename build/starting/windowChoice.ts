/** Whether a window can be shown at all: on Linux only with a display server. */
export function hasDisplay(platform: string, environment: Readonly<Record<string, string | undefined>>): boolean {
  if (environment['OUTYARD_HEADLESS']) return false;
  if (platform !== 'linux') return true;
  return Boolean(environment['DISPLAY'] || environment['WAYLAND_DISPLAY']);
}

/** As root neither Electron nor Chromium has a sandbox to start. */
export function rootFlags(userId: number | undefined): string[] {
  return userId === 0 ? ['--no-sandbox', '--test-type'] : [];
}

/** How a Chromium-family browser shows the address as a window of its own, with nothing fetched and nothing remembered. */
export function browserArguments(address: string, profile: string, userId: number | undefined): string[] {
  return [
    `--app=${address}`,
    `--user-data-dir=${profile}`,
    '--window-size=1280,800',
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-extensions',
    ...rootFlags(userId),
  ];
}
