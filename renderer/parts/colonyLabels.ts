/** The most colonies that one typed range may name. */
const mostInRange = 500;

export type Labels = { readonly ok: true; readonly labels: readonly string[] } | { readonly ok: false; readonly sentence: string };

/**
 * Labels typed in one field: one, several with commas between, or ranges as `LB-01..LB-06`, whose ends differ only in the
 * number that closes them. What is one of the `known` labels as it stands is that label, commas and dots included.
 */
export function colonyLabels(typed: string, known: ReadonlySet<string> = new Set()): Labels {
  const whole = typed.trim();
  if (whole === '' || known.has(whole)) return { ok: true, labels: whole === '' ? [] : [whole] };
  const labels: string[] = [];
  for (const part of whole.split(',')) {
    const piece = part.trim();
    if (piece === '') continue;
    const range = known.has(piece) ? null : /^(.*?)\s*\.\.\s*(.*)$/.exec(piece);
    if (range === null) {
      labels.push(piece);
      continue;
    }
    const read = rangeLabels(range[1] ?? '', range[2] ?? '');
    if (!read.ok) return read;
    labels.push(...read.labels);
  }
  return { ok: true, labels };
}

function rangeLabels(first: string, last: string): Labels {
  const from = /^(.*?)(\d+)$/.exec(first);
  const to = /^(.*?)(\d+)$/.exec(last);
  if (from === null || to === null || from[1] !== to[1]) {
    return refused(`“${first}..${last}” is no range: both ends need the same beginning and a number at the end, as LB-01..LB-06.`);
  }
  const [low, high] = [Number(from[2]), Number(to[2])];
  if (high < low) return refused(`“${first}..${last}” runs backwards; write the lower number first.`);
  if (high - low + 1 > mostInRange) return refused(`“${first}..${last}” names more than ${mostInRange} colonies; write it in parts.`);
  const width = from[2]?.length ?? 1;
  return { ok: true, labels: Array.from({ length: high - low + 1 }, (_, step) => `${from[1]}${String(low + step).padStart(width, '0')}`) };
}

function refused(sentence: string): Labels {
  return { ok: false, sentence };
}
