/** A typed price in minor units: `160`, `$1,234.50`, `160,50`; null if it is none. */
export function readCents(typed: string): number | null {
  const text = typed.trim().replace(/^\$\s*/, '').replace(/,(?=\d{3}\b)/g, '').replace(',', '.');
  return /^\d{1,7}(\.\d{1,2})?$/.test(text) ? Math.round(Number(text) * 100) : null;
}
