import { getDocument, GlobalWorkerOptions } from 'pdfjs-dist/legacy/build/pdf.mjs';
import workerUrl from 'pdfjs-dist/legacy/build/pdf.worker.min.mjs?url';

GlobalWorkerOptions.workerSrc = workerUrl;

/** Sharper than this costs memory and shows nothing more. */
const MOST_PIXELS_A_POINT = 3;

/**
 * Draws every page of a PDF onto a canvas of its own, `width` CSS pixels wide. Fonts come from the file alone; nothing is fetched or evaluated.
 * @param stopped asked between pages; true gives up
 * @throws when the bytes are no PDF
 */
export async function drawPages(pdf: Uint8Array, width: number, stopped: () => boolean): Promise<HTMLCanvasElement[]> {
  // The reader takes the bytes away from whoever gives them.
  const task = getDocument({ data: pdf.slice(), isEvalSupported: false, useWasm: false, useSystemFonts: false, verbosity: 0 });
  try {
    const document = await task.promise;
    const canvases: HTMLCanvasElement[] = [];
    for (let number = 1; number <= document.numPages && !stopped(); number += 1) {
      const page = await document.getPage(number);
      const points = page.getViewport({ scale: 1 });
      const shown = width / points.width;
      const viewport = page.getViewport({ scale: Math.min(shown * window.devicePixelRatio, MOST_PIXELS_A_POINT) });
      const canvas = window.document.createElement('canvas');
      canvas.width = Math.round(viewport.width);
      canvas.height = Math.round(viewport.height);
      canvas.style.width = `${width}px`;
      await page.render({ canvas, viewport }).promise;
      canvases.push(canvas);
    }
    return canvases;
  } finally {
    await task.destroy();
  }
}
