import { TEXT, type TextStyle } from '../paper.ts';
import type { Element, Sheet } from '../sheet.ts';

export type HeadingOptions = {
  readonly level?: 1 | 2 | 3;
  readonly style?: TextStyle;
  /** Height that must follow on the same page, so that no heading stands alone at its foot. */
  readonly keepWith?: number;
  readonly before?: number;
  readonly after?: number;
  readonly bookmark?: string | null;
  /** Where something stands beside it. */
  readonly width?: number;
  readonly under?: PDFKit.PDFOutline;
};

/** A heading of at most two lines, with its bookmark. Returns the bookmark, or null when none was asked for. */
export function heading(sheet: Sheet, parent: Element, text: string, options: HeadingOptions = {}): PDFKit.PDFOutline | null {
  const { level = 2, style = TEXT.section, keepWith = 54, before = 16, after = 4, bookmark = text, width = sheet.width, under } = options;
  const lines = sheet.lines(text, width, style, 2);
  sheet.ensure(before + lines.length * style.pitch + after + keepWith);
  if (!sheet.atTop) sheet.y += before;
  const mark = bookmark === null ? null : sheet.bookmark(bookmark, under);
  sheet.within(sheet.child(parent, `H${level}`), `H${level}`, () => {
    for (const line of lines) {
      sheet.put(line, sheet.left, sheet.y, style);
      sheet.y += style.pitch;
    }
  });
  sheet.y += after;
  return mark;
}
