/** Rows as a CSV text (RFC 4180); a value that a spreadsheet would run as a formula is made plain text. */
export function csvText(head: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  const cell = (value: string | number | null) => {
    if (value === null) return '';
    if (typeof value === 'number') return String(value);
    const plain = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
    return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
  };
  return [...[head, ...rows].map((row) => row.map(cell).join(',')), ''].join('\r\n');
}
