import { useEffect, useState, type RefObject } from 'react';

/** Inner size of an element in whole px, null before it is known. */
export function useSize(of: RefObject<HTMLElement | null>): { readonly width: number; readonly height: number } | null {
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);
  useEffect(() => {
    const element = of.current;
    if (!element) return undefined;
    const observer = new ResizeObserver(() => {
      const width = Math.floor(element.clientWidth);
      const height = Math.floor(element.clientHeight);
      setSize((now) => (now?.width === width && now.height === height ? now : { width, height }));
    });
    observer.observe(element);
    return () => { observer.disconnect(); };
  }, [of]);
  return size;
}
