/** Linear map from a data span to pixels; a span of no width maps to the start of the range. */
export function linearScale(domain: readonly [number, number], range: readonly [number, number]): (value: number) => number {
  const [from, to] = domain;
  const [start, end] = range;
  const width = to - from;
  return (value) => (width === 0 ? start : start + ((value - from) / width) * (end - start));
}

/** Round steps of 1, 2 or 5 times a power of ten that cover `from`..`to` with at most about `count` ticks, inside the span. */
export function niceTicks(from: number, to: number, count: number): number[] {
  if (!(to > from) || count < 1) return [from];
  const rough = (to - from) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((times) => times * power >= rough - 1e-12) ?? 10);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
}

/** Rounds a coordinate to a tenth of a pixel, so that a picture is the same text on every machine. */
export function px(value: number): number {
  return Math.round(value * 10) / 10;
}
