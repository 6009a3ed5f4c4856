export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const smallest = { width: 900, height: 600 } as const;
const wished = { width: 1280, height: 800 } as const;

/** Where the window opens: 1280 x 800 in the middle of the screen's free area, smaller where that does not fit. */
export function windowPlace(free: Rectangle): Rectangle {
  const width = Math.min(wished.width, free.width);
  const height = Math.min(wished.height, free.height);
  return {
    x: free.x + Math.floor((free.width - width) / 2),
    y: free.y + Math.floor((free.height - height) / 2),
    width,
    height,
  };
}
