export type Picture = { readonly image: PDFKit.Mixins.ImageSrc; readonly width: number; readonly height: number };

type Opened = { readonly width: number; readonly height: number; readonly colorSpace?: string; embed(doc: PDFKit.PDFDocument): void };

/**
 * A PNG or JPEG ready to be drawn, or null: for bytes that begin like a picture but can't be drawn, and for a picture in printing inks,
 * whose colours the document's profile (sRGB) does not describe. The page then says so instead of failing.
 */
export function openPicture(doc: PDFKit.PDFDocument, base64: string): Picture | null {
  try {
    const image = (doc as unknown as { openImage(src: Buffer): Opened }).openImage(Buffer.from(base64, 'base64'));
    if (image.colorSpace === 'DeviceCMYK') return null;
    image.embed(doc);
    return { image: image as unknown as PDFKit.Mixins.ImageSrc, width: image.width, height: image.height };
  } catch {
    return null;
  }
}
