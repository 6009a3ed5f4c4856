export const zoomSteps = [0.8, 0.9, 1, 1.1, 1.25, 1.5, 1.75, 2] as const;

/** The next step up (+1) or down (-1) from a zoom factor, held between 80 and 200 per cent. */
export function nextZoom(now: number, direction: 1 | -1): number {
  // Chromium keeps zoom as a power of 1.2 and gives it back a hair off.
  const beyond = zoomSteps.filter((step) => (direction === 1 ? step > now + 0.01 : step < now - 0.01));
  return (direction === 1 ? beyond[0] : beyond.at(-1)) ?? (direction === 1 ? 2 : 0.8);
}
