/** The parts of a hive by their trade names, in the order in which they are named. */
export const hiveParts = ['deep box', 'deep frame', 'medium super', 'medium frame', 'shallow super', 'shallow frame', 'bottom board', 'entrance reducer', 'inner cover', 'outer cover', 'stand', 'feeder', 'queen excluder'] as const;

/** "10 deep boxes", "1 deep box", "3 medium supers, 8-frame". */
export function countedItems(count: number, item: string): string {
  const text = String(Math.round(count * 100) / 100);
  if (count === 1) return `${text} ${item}`;
  const [name = '', ...rest] = item.split(', ');
  const many = /(x|ch|sh|ss)$/.test(name) ? `${name}es` : name.endsWith('s') ? name : `${name}s`;
  return `${text} ${[many, ...rest].join(', ')}`;
}
