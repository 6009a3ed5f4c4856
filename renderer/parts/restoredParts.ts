/** What was typed and not kept the last time; whatever cannot be read of it is left as it was. */
export function restoredParts<Typed extends Readonly<Record<string, string>>>(body: string, before: Typed): Typed {
  let found: unknown;
  try {
    found = JSON.parse(body);
  } catch {
    return before;
  }
  if (typeof found !== 'object' || found === null) return before;
  return { ...before, ...Object.fromEntries(Object.entries(found).filter(([part, value]) => Object.hasOwn(before, part) && typeof value === 'string')) };
}
