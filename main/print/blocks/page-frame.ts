import { FOOT_FROM_BOTTOM, MARGINS, TEXT } from '../paper.ts';
import type { Sheet } from '../sheet.ts';

export type PageFrame = {
  readonly laboratory: string;
  /** Number and revision, on every page so that pages can't be mixed up. */
  readonly name: string;
  /** Words that must be seen on every page: a draft, invented data. */
  readonly warnings: readonly string[];
  readonly foot: (page: number) => string;
  readonly digest: string;
};

/** Height that the running head takes on every page after the first. */
export const RUNNING_HEAD = 34;

function drawHead(sheet: Sheet, frame: PageFrame, page: number, count: number): void {
  const { left, right } = sheet;
  const pages = `page ${page + 1} of ${count}`;
  if (page === 0) {
    sheet.put(frame.name, right, MARGINS.top + 1, TEXT.mono, 'right');
    sheet.put(pages, right, MARGINS.top + 1 + TEXT.label.pitch, TEXT.label, 'right');
    if (frame.warnings.length > 0) sheet.put(frame.warnings.join(' · '), right, MARGINS.top - 14, TEXT.warnSmall, 'right');
    return;
  }
  const aside = sheet.fonts.width(frame.name, 'mono', TEXT.mono.size) + sheet.fonts.width(` · ${pages}`, 'sans', TEXT.label.size);
  const [name = ''] = sheet.lines(frame.laboratory, sheet.width - aside - 24, TEXT.running, 1);
  sheet.put(name, left, MARGINS.top, TEXT.running);
  const pagesWidth = sheet.put(` · ${pages}`, right, MARGINS.top, TEXT.label, 'right');
  sheet.put(frame.name, right - pagesWidth, MARGINS.top, TEXT.mono, 'right');
  if (frame.warnings.length > 0) sheet.put(frame.warnings.join(' · '), right, MARGINS.top - 14, TEXT.warnSmall, 'right');
}

/** Running head and foot of every page; called last, when the number of pages is known. */
export function drawPageFrames(sheet: Sheet, frame: PageFrame): void {
  const { count } = sheet.doc.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    sheet.doc.switchToPage(page);
    sheet.artifact(() => drawHead(sheet, frame, page, count), 'Pagination');
    if (page > 0) sheet.rule(MARGINS.top + 18, 'line', 0.6);
    const y = sheet.pageHeight - FOOT_FROM_BOTTOM - TEXT.small.pitch;
    sheet.rule(y - 6, 'line', 0.6);
    sheet.artifact(() => {
      const digestWidth = frame.digest === '' ? 0 : sheet.put(frame.digest, sheet.right, y, TEXT.monoSmall, 'right');
      const [foot = ''] = sheet.lines(frame.foot(page), sheet.width - digestWidth - 16, TEXT.small, 1);
      sheet.put(foot, sheet.left, y, TEXT.small);
    }, 'Pagination');
  }
}
