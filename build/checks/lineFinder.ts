/** Answers on which line (from 1) a character position of the text stands. */
export function lineFinder(text: string): (position: number) => number {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (position) => {
    let low = 0;
    let high = starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle]! <= position) low = middle;
      else high = middle;
    }
    return low + 1;
  };
}
