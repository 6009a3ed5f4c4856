/** Which wall the page talks through: the window's own bridge, or HTTP to the program on this machine. */
export type Wall = 'bridge' | 'loopback';

/** Styles may stand in the page because measured widths and chart colours are set there; scripts never. */
export function contentPolicy(wall: Wall): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self' 'unsafe-inline'",
    "font-src 'self'",
    "img-src 'self' data:",
    wall === 'bridge' ? "connect-src 'none'" : "connect-src 'self'",
    "frame-src 'none'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}

/** Headers of every answer that either host gives. */
export function pageHeaders(wall: Wall): Record<string, string> {
  return {
    'content-security-policy': contentPolicy(wall),
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'cache-control': 'no-store',
  };
}
