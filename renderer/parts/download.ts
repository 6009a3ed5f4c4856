/** Hands a text (UTF-8) or a picture to the person as a file. */
export function download(fileName: string, content: string | Blob, type = 'text/csv;charset=utf-8'): void {
  const address = URL.createObjectURL(typeof content === 'string' ? new Blob([content], { type }) : content);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has taken its copy once the click is handled; the address is freed a little later to be sure.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
