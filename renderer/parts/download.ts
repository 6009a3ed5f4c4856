/** Hands a text to the person as a file, UTF-8. */
export function download(fileName: string, text: string, type = 'text/csv;charset=utf-8'): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has taken its copy once the click is handled; the address is freed a little later to be sure.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
