import { openPicture } from '../open-picture.ts';
import { PAPER_INKS, TEXT } from '../paper.ts';
import type { Element, Sheet } from '../sheet.ts';

export type Photograph = { readonly caption: string; readonly base64: string; readonly sha256: string };

const COLUMNS = 3;
const GAP = 14;
const PICTURE_HEIGHT = 118;

const columnWidth = (sheet: Sheet): number => (sheet.width - GAP * (COLUMNS - 1)) / COLUMNS;
const captionsOf = (sheet: Sheet, row: readonly Photograph[]): string[][] => row.map((photo) => sheet.lines(photo.caption.trim() === '' ? 'photograph' : photo.caption, columnWidth(sheet), TEXT.smallInk, 3));
const rowHeight = (captions: readonly string[][]): number => PICTURE_HEIGHT + 5 + Math.max(...captions.map((c) => c.length)) * TEXT.smallInk.pitch + TEXT.monoSmall.pitch + 10;

/** Height of the first row, which belongs on the page of what it shows; 0 without photographs. */
export const firstRowHeight = (sheet: Sheet, list: readonly Photograph[]): number => (list.length === 0 ? 0 : rowHeight(captionsOf(sheet, list.slice(0, COLUMNS))));

/** Photographs in rows of three, each with its caption and the first digits of its SHA-256. A row is never divided. */
export function photographs(sheet: Sheet, parent: Element, list: readonly Photograph[]): void {
  const width = columnWidth(sheet);
  for (let start = 0; start < list.length; start += COLUMNS) {
    const row = list.slice(start, start + COLUMNS);
    const captions = captionsOf(sheet, row);
    const height = rowHeight(captions);
    sheet.ensure(height);
    const top = sheet.y;
    row.forEach((photo, index) => {
      const x = sheet.left + index * (width + GAP);
      const caption = captions[index]!;
      const figure = sheet.child(parent, 'Figure', { alt: `Photograph: ${photo.caption}` });
      const picture = openPicture(sheet.doc, photo.base64);
      sheet.within(figure, 'Figure', () => {
        if (picture) sheet.doc.image(picture.image, x, top, { fit: [width, PICTURE_HEIGHT], valign: 'bottom' });
        else {
          sheet.doc.lineWidth(0.6).strokeColor(PAPER_INKS.line).rect(x + 0.3, top + 0.3, width - 0.6, PICTURE_HEIGHT - 0.6).stroke();
          sheet.put('picture can’t be drawn,', x + width / 2, top + PICTURE_HEIGHT / 2 - 12, TEXT.warnSmall, 'center');
          sheet.put('kept in the casebook', x + width / 2, top + PICTURE_HEIGHT / 2, TEXT.warnSmall, 'center');
        }
      });
      sheet.within(sheet.child(parent, 'Caption'), 'Caption', () => {
        caption.forEach((line, n) => sheet.put(line, x, top + PICTURE_HEIGHT + 5 + n * TEXT.smallInk.pitch, TEXT.smallInk));
        sheet.put(`${photo.sha256.slice(0, 16)}…`, x, top + PICTURE_HEIGHT + 5 + caption.length * TEXT.smallInk.pitch, TEXT.monoSmall);
      });
    });
    sheet.y = top + height;
  }
}
