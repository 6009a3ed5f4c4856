/** A spreadsheet read from the disk, as the desk takes it. */
export interface SheetFile {
  readonly name: string;
  readonly base64: string;
}

let laidOut: SheetFile | null = null;

/** Lays a file out for the page that asks what its columns mean; it stays until another one comes or it is put aside. */
export function layOut(file: SheetFile | null): void {
  laidOut = file;
}

export function fileLaidOut(): SheetFile | null {
  return laidOut;
}
