/** What the loopback host knows of a caller. */
export interface CallerHeaders {
  readonly host: string | undefined;
  readonly origin: string | undefined;
  readonly fetchSite: string | undefined;
}

/**
 * Why a caller is turned away, or null. `Host` must be exactly ours, so that a name which someone points at this
 * machine (DNS rebinding) reaches nothing; `Origin` must be ours where one is sent, and must be sent with a POST.
 */
export function refusedCaller(headers: CallerHeaders, port: number, method: string): string | null {
  const ours = `127.0.0.1:${port}`;
  if (headers.host !== ours) return 'This address is not the one that the program answers at.';
  if (headers.origin === undefined ? method !== 'GET' : headers.origin !== `http://${ours}`) {
    return 'Only the program’s own pages may ask here.';
  }
  const site = headers.fetchSite;
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return 'Another site may not ask here.';
  return null;
}
