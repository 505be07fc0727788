import { TEXT } from '../paper.ts';
import type { Element, Sheet } from '../sheet.ts';

export type SignatureLine = { readonly name: string; readonly detail: string };

const COLUMNS = 2;
const GAP = 40;
/** Free height above the line, enough for a signature by hand. */
const SPACE = 38;

/** Lines to sign on, two beside each other, with the name below. A pair is never divided. */
export function signatureLines(sheet: Sheet, parent: Element, list: readonly SignatureLine[]): void {
  const width = (sheet.width - GAP * (COLUMNS - 1)) / COLUMNS;
  for (let start = 0; start < list.length; start += COLUMNS) {
    const pair = list.slice(start, start + COLUMNS).map((entry) => ({
      name: sheet.lines(entry.name, width, TEXT.body, 2), detail: sheet.lines(entry.detail, width, TEXT.small, 2),
    }));
    const height = SPACE + Math.max(...pair.map((p) => p.name.length * TEXT.body.pitch + p.detail.length * TEXT.small.pitch)) + 8;
    sheet.ensure(height);
    const top = sheet.y;
    pair.forEach((entry, index) => {
      const x = sheet.left + index * (width + GAP);
      sheet.rule(top + SPACE, 'ink3', 0.6, x, x + width);
      sheet.within(sheet.child(parent, 'P'), 'P', () => {
        entry.name.forEach((line, n) => sheet.put(line, x, top + SPACE + 4 + n * TEXT.body.pitch, TEXT.body));
        entry.detail.forEach((line, n) => sheet.put(line, x, top + SPACE + 4 + entry.name.length * TEXT.body.pitch + n * TEXT.small.pitch, TEXT.small));
      });
    });
    sheet.y = top + height;
  }
}
