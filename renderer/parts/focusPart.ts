/** Puts the keyboard into a field of a form, by its name. */
export function focusPart(form: HTMLFormElement | null, part: string | undefined): void {
  const found = part === undefined ? null : form?.elements.namedItem(part);
  if (found instanceof HTMLElement) found.focus();
}
