/** A draft as it was put away; null where it is no record of parts. */
export function parsedDraft(body: string): Readonly<Record<string, unknown>> | null {
  try {
    const found: unknown = JSON.parse(body);
    return typeof found === 'object' && found !== null ? { ...found } : null;
  } catch {
    return null;
  }
}

/** What was typed and not kept the last time; whatever cannot be read of it is left as it was. */
export function restoredParts<Typed extends Readonly<Record<string, string>>>(body: string, before: Typed): Typed {
  const found = parsedDraft(body);
  if (found === null) return before;
  return { ...before, ...Object.fromEntries(Object.entries(found).filter(([part, value]) => Object.hasOwn(before, part) && typeof value === 'string')) };
}
