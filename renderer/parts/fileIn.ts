/** The most that one file may hold, as the contract allows: 64 MiB. */
export const largestFile = 64 * 1024 * 1024;

/**
 * A chosen file's bytes as base64, read by the browser away from the window's own thread.
 * `onShare` hears how much is read, 0 to 1. Rejects when the browser cannot read the file.
 */
export function base64Of(file: Blob, onShare: (share: number) => void): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onprogress = (event) => {
      if (event.lengthComputable && event.total > 0) onShare(event.loaded / event.total);
    };
    reader.onerror = () => reject(reader.error ?? new Error('unreadable'));
    reader.onload = () => {
      // `data:text/csv;base64,ZGF0…`; an empty file has nothing after the comma, or no comma at all.
      const url = String(reader.result);
      const comma = url.indexOf(',');
      resolve(comma < 0 ? '' : url.slice(comma + 1));
    };
    reader.readAsDataURL(file);
  });
}
