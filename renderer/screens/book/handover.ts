/** A file chosen on the start page, on its way to the Book screen of the book just started. */
let waiting: File | null = null;

export function handOver(file: File): void {
  waiting = file;
}

/** The file, once. */
export function takeOver(): File | null {
  const file = waiting;
  waiting = null;
  return file;
}
