/** "10 deep boxes", "1 deep box", "3 medium supers, 8-frame". */
export function countedItems(count: number, item: string): string {
  const text = String(Math.round(count * 100) / 100);
  if (count === 1) return `${text} ${item}`;
  const [name = '', ...rest] = item.split(', ');
  const many = /(x|ch|sh|ss)$/.test(name) ? `${name}es` : name.endsWith('s') ? name : `${name}s`;
  return `${text} ${[many, ...rest].join(', ')}`;
}
