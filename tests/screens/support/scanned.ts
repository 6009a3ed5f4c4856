import jsQR from 'jsqr';
import type { Locator, Page } from 'playwright-core';

/** The light and dark of a picture of what is on the screen, as a camera would see it; read by another library than the one that made the code. */
export async function scanned(page: Page, of: Locator): Promise<string | null> {
  const png = (await of.screenshot()).toString('base64');
  const { width, height, grey } = await page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
    const paper = canvas.getContext('2d');
    if (paper === null) throw new Error('no canvas');
    paper.drawImage(image, 0, 0);
    const dots = paper.getImageData(0, 0, canvas.width, canvas.height).data;
    return { width: canvas.width, height: canvas.height, grey: Array.from({ length: canvas.width * canvas.height }, (_, at) => dots[at * 4] ?? 0) };
  }, png);
  return jsQR.default(Uint8ClampedArray.from(grey.flatMap((shade) => [shade, shade, shade, 255])), width, height)?.data ?? null;
}
