import { inflateSync } from 'node:zlib';

export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** The rectangles ("re") on one page of a PDF as its content stream draws them; y downwards, as the writer turns every page over. */
export async function filledRectangles(bytes: Uint8Array, page: number): Promise<Box[]> {
  const raw = Buffer.from(bytes);
  const streams: string[] = [];
  for (let from = raw.indexOf('stream\n'); from >= 0; from = raw.indexOf('stream\n', from + 7)) {
    if (raw.subarray(from - 3, from).toString('latin1') === 'end') continue;
    try {
      streams.push(inflateSync(raw.subarray(from + 7)).toString('latin1'));
    } catch {
      // Not a compressed stream.
    }
  }
  const contents = streams.filter((text) => text.includes(' re\n'));
  return [...(contents[page] ?? '').matchAll(/^(-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+) re$/gm)]
    .map(([, x, y, width, height]) => ({ x: Number(x), y: Number(y), width: Number(width), height: Number(height) }));
}

/** Black rectangles on white, in a window of the page; scale in pixels per point. */
export function rasterise(boxes: readonly Box[], window: { readonly left: number; readonly top: number; readonly width: number; readonly height: number }, scale: number) {
  const width = Math.round(window.width * scale);
  const height = Math.round(window.height * scale);
  const pixels = new Uint8ClampedArray(width * height * 4).fill(255);
  for (const box of boxes) {
    const x1 = Math.max(0, Math.round((box.x - window.left) * scale));
    const x2 = Math.min(width, Math.round((box.x + box.width - window.left) * scale));
    const y1 = Math.max(0, Math.round((box.y - window.top) * scale));
    const y2 = Math.min(height, Math.round((box.y + box.height - window.top) * scale));
    for (let y = y1; y < y2; y += 1) for (let x = x1; x < x2; x += 1) pixels.fill(0, (y * width + x) * 4, (y * width + x) * 4 + 3);
  }
  return { pixels, width, height };
}
