/** Largest picture that is read, in millions of points; beyond, a small file could fill the memory. Common practice, no source. */
export const MOST_MEGAPIXELS = 100;
/** The longer side is at most this many times the shorter: panoramas fit, made-up strips do not (judgement). */
const MOST_STRETCHED = 20;

/** Whether a size from a file's header is one that will be read, and why not. */
export function refuseSize(width: number, height: number): { readonly code: 'too-large'; readonly megapixels: number } | { readonly code: 'odd-shape'; readonly width: number; readonly height: number } | null {
  const megapixels = width * height / 1e6;
  if (megapixels > MOST_MEGAPIXELS) return { code: 'too-large', megapixels };
  const [short, long] = width < height ? [width, height] : [height, width];
  return short < 1 || long > MOST_STRETCHED * Math.max(short, 16) ? { code: 'odd-shape', width, height } : null;
}
