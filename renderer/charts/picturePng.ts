/** Chromium draws no canvas with a side longer than this. */
const longestSide = 32_000;
/** Nor one with more dots than this, of which each takes four bytes. */
const mostDots = 120_000_000;

/** Dots per pixel of the drawing: as many as asked for, fewer where the picture is very large; null where not even one fits. */
export function pictureScale(width: number, height: number, wanted = 3): number | null {
  const scale = Math.min(wanted, longestSide / Math.max(width, height), Math.sqrt(mostDots / (width * height)));
  return scale < 1 ? null : Math.floor(scale * 100) / 100;
}

/**
 * An SVG file's text as a PNG on white paper. The drawing comes in as a data: address, which the content policy lets images
 * have; it holds nothing from elsewhere, so the canvas may be read. Null where it is too large for one picture.
 */
export async function picturePng(svg: string): Promise<Blob | null> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const { naturalWidth: width, naturalHeight: height } = image;
  const scale = pictureScale(width, height);
  if (scale === null) return null;
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const paper = canvas.getContext('2d');
  if (paper === null) return null;
  paper.fillStyle = '#ffffff';
  paper.fillRect(0, 0, canvas.width, canvas.height);
  paper.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/png'));
}
