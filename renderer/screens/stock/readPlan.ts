/** A target as typed; null where none is (as many as were wintered last), undefined if it cannot be read. */
export function readTarget(text: string): number | null | undefined {
  const typed = text.trim().replace(/,/g, '');
  if (typed === '') return null;
  return /^\d{1,6}$/.test(typed) && Number(typed) <= 100_000 ? Number(typed) : undefined;
}

/** A confidence in per cent as typed, as a share; null if it is no number from 50 to 99. */
export function readConfidence(text: string): number | null {
  const typed = text.trim().replace(/\s*%$/, '').replace(',', '.');
  if (!/^\d{2}(\.\d)?$/.test(typed)) return null;
  const share = Math.round(Number(typed) * 10) / 1000;
  return share >= 0.5 && share <= 0.99 ? share : null;
}
