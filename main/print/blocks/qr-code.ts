import QRCode from 'qrcode';
import { PAPER_INKS } from '../paper.ts';
import type { Sheet } from '../sheet.ts';

/** Light border around the symbol, in modules (ISO/IEC 18004:2015, 9.1 asks for four). */
export const QUIET_ZONE = 4;

export type QrMatrix = { readonly size: number; isDark(row: number, column: number): boolean };

/** The modules of a QR code; level M bears about 15 % damage (ISO/IEC 18004:2015). */
export function qrMatrix(text: string): QrMatrix {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' });
  return { size: modules.size, isDark: (row, column) => modules.get(row, column) === 1 };
}

/** Draws a QR code as one filled shape of vectors in a square of the given side, quiet zone included. */
export function drawQrCode(sheet: Sheet, text: string, x: number, y: number, side: number): void {
  const matrix = qrMatrix(text);
  const unit = side / (matrix.size + 2 * QUIET_ZONE);
  const { doc } = sheet;
  doc.fillColor(PAPER_INKS.ink);
  for (let row = 0; row < matrix.size; row += 1) {
    for (let column = 0; column < matrix.size; column += 1) {
      if (!matrix.isDark(row, column)) continue;
      let end = column;
      while (end + 1 < matrix.size && matrix.isDark(row, end + 1)) end += 1;
      doc.rect(x + (column + QUIET_ZONE) * unit, y + (row + QUIET_ZONE) * unit, (end - column + 1) * unit, unit);
      column = end;
    }
  }
  doc.fill();
}
