import type { LabelsModel } from '../../app/report/labels-model.ts';
import { drawQrCode } from './blocks/qr-code.ts';
import { contentDigest } from './content-digest.ts';
import type { PageSize } from './paper.ts';
import { TEXT } from './paper.ts';
import { Sheet } from './sheet.ts';

/** A sheet of labels: how many, how large, where the first one begins. Points. */
export type LabelGrid = { readonly columns: number; readonly rows: number; readonly width: number; readonly height: number; readonly left: number; readonly top: number; readonly columnStep: number; readonly rowStep: number };

const mm = (value: number): number => (value * 72) / 25.4;
const inch = (value: number): number => value * 72;

/** Sheets of 24 (63.5 × 33.9 mm) and of 30 labels (2⅝ × 1 in), sold everywhere for these papers: common practice, no source. */
export const LABEL_GRIDS: Readonly<Record<PageSize, LabelGrid>> = {
  A4: { columns: 3, rows: 8, width: mm(63.5), height: mm(33.9), left: mm(7.2), top: mm(12.9), columnStep: mm(66.04), rowStep: mm(33.9) },
  Letter: { columns: 3, rows: 10, width: inch(2.625), height: inch(1), left: inch(0.1875), top: inch(0.5), columnStep: inch(2.75), rowStep: inch(1) },
};

/** Nothing is printed nearer to the edge of a label than this. */
const INSET = 7;
const GAP = 5;
/** A number that needs smaller type than this stands in two lines instead, points. */
const SMALLEST_NUMBER = 7;

function drawLabel(sheet: Sheet, model: LabelsModel, index: number, x: number, y: number, grid: LabelGrid): void {
  const label = model.labels[index]!;
  const side = grid.height - 2 * INSET + 6;
  const part = sheet.child(sheet.root, 'Sect', { title: label.number });
  // The quiet zone of the code may lie in the inset.
  sheet.within(sheet.child(part, 'Figure', { alt: `QR code that reads ${label.number}` }), 'Figure', () => drawQrCode(sheet, label.number, x + INSET - 4, y + (grid.height - side) / 2, side));
  const left = x + INSET - 4 + side + GAP;
  const width = x + grid.width - INSET - left;
  const full = sheet.fonts.width(label.number, TEXT.labelNumber.font, TEXT.labelNumber.size);
  const numberStyle = { ...TEXT.labelNumber, size: Math.max(SMALLEST_NUMBER, Math.min(TEXT.labelNumber.size, (TEXT.labelNumber.size * width) / full)) };
  const number = sheet.lines(label.number, width, numberStyle, 2);
  const description = sheet.lines(label.description, width, TEXT.labelSmall, 2);
  const below = [label.seal === '' ? '' : `seal ${label.seal}`, model.demonstration ? 'invented data' : label.received].filter((text) => text !== '');
  const room = grid.height - 2 * INSET;
  const lines = [
    ...number.map((text) => ({ text, style: numberStyle })),
    ...description.map((text) => ({ text, style: TEXT.labelSmall })),
    ...below.map((text) => ({ text: sheet.lines(text, width, TEXT.labelSmall, 1)[0]!, style: TEXT.labelSmall })),
  ];
  let used = 0;
  const fitting = lines.filter((line) => (used += line.style.pitch) <= room);
  const height = fitting.reduce((sum, line) => sum + line.style.pitch, 0);
  let at = y + (grid.height - height) / 2;
  sheet.within(sheet.child(part, 'P'), 'P', () => {
    for (const line of fitting) {
      sheet.put(line.text, left, at, line.style);
      at += line.style.pitch;
    }
  });
}

/** Sheets of labels with the QR code and the number of each item, as a PDF. A case without items gives one page that says so. */
export async function renderLabels(model: LabelsModel): Promise<Uint8Array<ArrayBuffer>> {
  const sheet = new Sheet({
    pageSize: model.pageSize, language: model.language, createdAt: new Date(model.receivedAt), runningHead: 0, digest: contentDigest(model),
    title: `Labels for case ${model.caseNumber}`, author: model.laboratory, subject: `Labels of the items of case ${model.caseNumber}`,
  });
  const grid = LABEL_GRIDS[model.pageSize];
  const perPage = grid.columns * grid.rows;
  if (model.labels.length === 0) {
    sheet.within(sheet.child(sheet.root, 'P'), 'P', () => sheet.put(`Case ${model.caseNumber} holds no item yet.`, sheet.left, sheet.y, TEXT.body));
  }
  for (const index of model.labels.keys()) {
    const place = index % perPage;
    if (place === 0 && index > 0) sheet.newPage();
    drawLabel(sheet, model, index, grid.left + (place % grid.columns) * grid.columnStep, grid.top + Math.floor(place / grid.columns) * grid.rowStep, grid);
  }
  return sheet.finish();
}
