/** Text as searching sees it: case and accents make no difference. */
export function searchText(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}

/** Every word of what was typed must be somewhere in the text. */
export function matches(haystack: string, typed: string): boolean {
  return searchText(typed)
    .split(/\s+/)
    .every((word) => haystack.includes(word));
}

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** `LB-2` before `LB-10`. */
export function byLabel(a: string, b: string): number {
  return collator.compare(a, b);
}
