const before = 'Outyard honey lot';

/** What the code on a jar holds, as plain text that says what it is without the program. */
export function jarText(lot: string): string {
  return `${before} ${lot}`;
}

/** The lot of what was read off a jar: its name, or all that its code holds. Empty where nothing but "lot" stands there. */
export function lotOfJar(typed: string): string {
  const text = typed.trim();
  return (text.toLowerCase().startsWith(before.toLowerCase()) ? text.slice(before.length) : text.replace(/^lot(?:\s+|$)/i, '')).trim();
}
