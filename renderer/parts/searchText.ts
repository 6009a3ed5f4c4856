import { foldedWords } from '#shared/fold.ts';

/** Every word of what was typed must be somewhere in the folded text. */
export function matches(haystack: string, typed: string): boolean {
  return foldedWords(typed).every((word) => haystack.includes(word));
}

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** `LB-2` before `LB-10`. */
export function byLabel(a: string, b: string): number {
  return collator.compare(a, b);
}
