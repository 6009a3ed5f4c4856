/** "1.09", "0.4", "more than 100": a ratio for a sentence. */
export function ratioText(value: number): string {
  if (value > 100) return 'more than 100';
  if (value < 0.01) return 'less than 0.01';
  return value >= 10 ? value.toFixed(0) : value.toFixed(2);
}

/** "1.04 to 1.15" */
export function ratioRange([low, high]: readonly [number, number]): string {
  return `${ratioText(low)} to ${ratioText(high)}`;
}

/** "1 colony", "12 colonies" */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

export const colonies = (count: number): string => counted(count, 'colony', 'colonies');
export const losses = (count: number): string => counted(count, 'loss', 'losses');

/** "a, b and c" */
export function listed(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
