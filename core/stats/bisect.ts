/**
 * The x at which a rising function passes 0, for a function on the whole line that does so once: the bracket
 * is widened from [-1, 1] until it holds the root, then halved until no number lies in between.
 */
export function risingRoot(f: (x: number) => number): number {
  let low = -1;
  let high = 1;
  while (f(low) > 0) low *= 2;
  while (f(high) < 0) high *= 2;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) return middle;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
}
