/**
 * How well a folded name fits folded words: 0 it is what was typed, 1 it begins with it, 2 each word begins one of its
 * words, 3 each word is somewhere in it; null if one is not.
 */
export function matchRank(name: string, words: readonly string[]): number | null {
  if (!words.every((word) => name.includes(word))) return null;
  const typed = words.join(' ');
  if (name === typed) return 0;
  if (name.startsWith(typed)) return 1;
  return words.every((word) => beginsWord(name, word)) ? 2 : 3;
}

function beginsWord(name: string, word: string): boolean {
  for (let at = name.indexOf(word); at >= 0; at = name.indexOf(word, at + 1)) {
    if (at === 0 || !/[\p{L}\p{N}]/u.test(name.charAt(at - 1))) return true;
  }
  return false;
}
