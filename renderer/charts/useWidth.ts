import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

/** The width of a box in whole pixels, kept between bounds and followed as the window changes. */
export function useWidth(least: number, most: number): [RefObject<HTMLDivElement | null>, number] {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(least);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const measure = () => setWidth(Math.round(Math.max(least, Math.min(most, element.clientWidth))));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [least, most]);
  return [box, width];
}
