export function lotAddress(code: string): string {
  return `/honey/lots/${encodeURIComponent(code)}`;
}

export function labelsAddress(code: string): string {
  return `/print/labels/${encodeURIComponent(code)}`;
}

/** The lot that stands in an address. */
export function lotIn(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
