const kept = new WeakMap<object, Map<string, unknown>>();

/** What was worked out of a picture of the book, kept as long as the picture is: one that changed is another object. */
export function keptFor<Value>(picture: object, key: string, make: () => Value): Value {
  const own = kept.get(picture) ?? new Map<string, unknown>();
  kept.set(picture, own);
  if (!own.has(key)) own.set(key, keepWhole(own, key, make()));
  // What stands under a key was put there by the same make.
  return own.get(key) as Value;
}

/** Whoever asks meanwhile waits for the same; what was not carried to its end is made anew by the next. */
function keepWhole(own: Map<string, unknown>, key: string, made: unknown): unknown {
  if (made instanceof Promise) made.catch(() => own.delete(key));
  return made;
}
