/** Puts a text on the clipboard; false where the machine does not let a page do so. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // Windows that may not use the clipboard by themselves still copy what is selected.
    const field = document.createElement('textarea');
    field.value = text;
    field.style.position = 'fixed';
    field.style.opacity = '0';
    const before = document.activeElement;
    document.body.append(field);
    field.select();
    const done = document.execCommand('copy');
    field.remove();
    if (before instanceof HTMLElement) before.focus();
    return done;
  }
}
