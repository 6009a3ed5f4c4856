import { randomBytes, timingSafeEqual } from 'node:crypto';

/** A fresh secret of 256 bits, as text that is safe in addresses and cookies. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** Equality whose time tells nothing about where two texts differ. */
export function sameSecret(given: string, expected: string): boolean {
  const [left, right] = [Buffer.from(given), Buffer.from(expected)];
  return left.length === right.length && timingSafeEqual(left, right);
}

/** The value of one cookie in a `Cookie` header, or null. */
export function cookieValue(header: string | undefined, name: string): string | null {
  for (const part of (header ?? '').split(';')) {
    const at = part.indexOf('=');
    if (at > 0 && part.slice(0, at).trim() === name) return part.slice(at + 1).trim();
  }
  return null;
}
