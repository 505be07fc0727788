import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';

type DrawnPicture = { readonly name: string; readonly mediaType: 'image/png' | 'image/jpeg'; readonly bytes: Uint8Array };

/** Longer side of the picture that is made of a drawing in vectors, in points: sharp on a printed page. */
const DRAWN_SIDE = 2400;

const trouble = (name: string): Result<DrawnPicture, Pick<Failure, 'message' | 'next'>> =>
  err({ message: `${name} is not a drawing that the window can read.`, next: 'Save it as SVG, PNG or JPEG and add it again; nothing of it was kept.' });

function load(url: string): Promise<HTMLImageElement | null> {
  return new Promise((resolve) => {
    const image = new Image();
    image.onload = () => { resolve(image); };
    image.onerror = () => { resolve(null); };
    image.src = url;
  });
}

/** The window draws a drawing in vectors as an image, in which no script runs and nothing is fetched. */
async function rasterise(file: File): Promise<Uint8Array | null> {
  const url = URL.createObjectURL(new Blob([await file.arrayBuffer()], { type: 'image/svg+xml' }));
  try {
    const image = await load(url);
    if (image === null || !(image.width > 0) || !(image.height > 0)) return null;
    const scale = DRAWN_SIDE / Math.max(image.width, image.height);
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(image.width * scale);
    canvas.height = Math.round(image.height * scale);
    const pen = canvas.getContext('2d');
    if (pen === null) return null;
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => { canvas.toBlob(resolve, 'image/png'); });
    return blob === null ? null : new Uint8Array(await blob.arrayBuffer());
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** A drawing as a picture that can be kept and printed: PNG and JPEG as they are, SVG drawn as PNG under a name that says so. */
export async function drawingToPicture(file: File): Promise<Result<DrawnPicture, Pick<Failure, 'message' | 'next'>>> {
  if (file.type === 'image/png' || file.type === 'image/jpeg') return ok({ name: file.name, mediaType: file.type, bytes: new Uint8Array(await file.arrayBuffer()) });
  if (file.type !== 'image/svg+xml') return trouble(file.name);
  const bytes = await rasterise(file);
  return bytes === null ? trouble(file.name) : ok({ name: `${file.name}.png`, mediaType: 'image/png', bytes });
}
