/** What the key asks for when Ctrl is held: Ctrl Z undoes, Ctrl Shift Z and Ctrl Y redo. Null for any other. */
export function undoKeyOf(event: { readonly key: string; readonly shiftKey: boolean }): 'undo' | 'redo' | null {
  const key = event.key.toLowerCase();
  if (key === 'z') return event.shiftKey ? 'redo' : 'undo';
  return key === 'y' && !event.shiftKey ? 'redo' : null;
}
