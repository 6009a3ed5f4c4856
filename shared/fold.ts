/** Letters that do not come apart into a plain one and its accent. */
const plain: Readonly<Record<string, string>> = {
  ł: 'l', ß: 'ss', ø: 'o', đ: 'd', ð: 'd', þ: 'th', æ: 'ae', œ: 'oe', ı: 'i', ħ: 'h', ŧ: 't', ŋ: 'n', ĸ: 'k', ƒ: 'f', ẞ: 'ss', '’': "'", '‘': "'", '–': '-', '—': '-', '‐': '-', '‑': '-',
};
const special = new RegExp(`[${Object.keys(plain).join('')}]`, 'gu');
// eslint-disable-next-line no-control-regex -- the range is ASCII itself
const ascii = /^[\x00-\x7f]*$/;

/**
 * Text as searching sees it: case, accents, the width of spaces and marks of writing direction make no difference,
 * and ł, ß, ø, æ and the like count as their plain letters. Idempotent.
 */
export function fold(text: string): string {
  const lower = text.toLowerCase();
  const bare = ascii.test(lower) ? lower : lower.normalize('NFKD').replace(/[\p{M}\p{Cf}]/gu, '').toLowerCase().replace(special, (letter) => plain[letter] ?? letter);
  return bare.replace(/\s+/g, ' ').trim();
}

/** The folded words of what was typed into a search; none if there is nothing but space. */
export function foldedWords(typed: string): string[] {
  const text = fold(typed);
  return text === '' ? [] : text.split(' ');
}
