import { TEXT, type TextStyle } from '../paper.ts';
import type { Element, Sheet } from '../sheet.ts';

export type ParagraphOptions = {
  readonly x?: number;
  readonly width?: number;
  readonly style?: TextStyle;
  readonly type?: 'P' | 'LBody' | 'Caption' | 'TD' | 'TH';
  /** Free space after it. */
  readonly after?: number;
  readonly atMost?: number;
};

/** Running text: flows over pages, never leaving a single line of a longer paragraph alone at the foot of a page. */
export function paragraph(sheet: Sheet, parent: Element, text: string, options: ParagraphOptions = {}): void {
  const { x = sheet.left, width = sheet.right - x, style = TEXT.body, type = 'P', after = 0, atMost } = options;
  const lines = sheet.lines(text, width, style, atMost);
  const element = sheet.child(parent, type);
  let next = 0;
  while (next < lines.length) {
    const left = lines.length - next;
    let fits = Math.min(left, Math.floor((sheet.room + 0.01) / style.pitch));
    if (left > 1 && fits === 1) fits = 0;
    if (left - fits === 1 && fits > 2) fits -= 1;
    if (fits < 1) {
      if (!sheet.atTop) { sheet.newPage(); continue; }
      fits = 1;
    }
    sheet.within(element, type, () => {
      for (const line of lines.slice(next, next + fits)) {
        sheet.put(line, x, sheet.y, style);
        sheet.y += style.pitch;
      }
    });
    next += fits;
    if (next < lines.length) sheet.newPage();
  }
  sheet.y += after;
}
