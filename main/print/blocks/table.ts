import type { Ink } from '../../../app/figure/figure-model.ts';
import { TEXT, type TextStyle } from '../paper.ts';
import type { Element, Sheet } from '../sheet.ts';

/** A piece of a cell: each begins on a new line. */
export type CellPart = { readonly text: string; readonly style?: TextStyle; readonly atMost?: number };
export type Cell = {
  readonly parts: readonly CellPart[];
  /** Drawn at the left of the first line, with this much room kept for it. */
  readonly sign?: { readonly width: number; draw(x: number, y: number): void };
  /** Called with the place of the first line of a cell whose text is written later. */
  readonly promise?: (onPage: number, x: number, y: number, element: Element) => void;
};

export type Column = {
  readonly head: string;
  /** Share of the table's width. */
  readonly share: number;
  readonly align?: 'left' | 'right';
  readonly style?: TextStyle;
  /** Cells of this column are the heads of their rows. */
  readonly rowHead?: boolean;
};

export type TableOptions = { readonly x?: number; readonly width?: number; readonly showHead?: boolean; readonly padding?: number; readonly lineInk?: Ink };

export const cell = (text: string, style?: TextStyle): Cell => ({ parts: [style ? { text, style } : { text }] });

const GUTTER = 12;

type LaidLine = { readonly text: string; readonly style: TextStyle };
type LaidCell = { readonly lines: readonly LaidLine[]; readonly sign: Cell['sign']; readonly promise: Cell['promise'] };

function layCell(sheet: Sheet, content: Cell, column: Column, width: number): LaidCell {
  const inset = content.sign?.width ?? 0;
  const lines = content.parts.filter((part, index) => index === 0 || part.text.trim() !== '').flatMap((part) => {
    const style = part.style ?? column.style ?? TEXT.body;
    return sheet.lines(part.text, width - inset, style, part.atMost).map((text) => ({ text, style }));
  });
  return { lines, sign: content.sign, promise: content.promise };
}

const heightOf = (lines: readonly LaidLine[]): number => lines.reduce((sum, line) => sum + line.style.pitch, 0);

/** As many lines as fit into a height, at least one. */
function linesWithin(lines: readonly LaidLine[], height: number): number {
  let used = 0;
  let count = 0;
  for (const line of lines) {
    used += line.style.pitch;
    if (used > height && count > 0) break;
    count += 1;
  }
  return count;
}

/** A table with hairlines whose head is repeated on every page; a row stays whole unless it is taller than a page allows. */
export function table(sheet: Sheet, parent: Element, columns: readonly Column[], rows: readonly (readonly Cell[])[], options: TableOptions = {}): void {
  const { x = sheet.left, width = sheet.right - x, showHead = true, padding = 3.6, lineInk = 'line2' } = options;
  const total = columns.reduce((sum, column) => sum + column.share, 0);
  const usable = width - GUTTER * (columns.length - 1);
  const widths = columns.map((column) => (usable * column.share) / total);
  const lefts = widths.map((_, index) => x + widths.slice(0, index).reduce((sum, w) => sum + w + GUTTER, 0));
  const element = sheet.child(parent, 'Table');
  const headLines = columns.map((column, index) => sheet.lines(column.head, widths[index]!, TEXT.tableHead, 2));
  const headHeight = showHead ? Math.max(...headLines.map((lines) => lines.length)) * TEXT.tableHead.pitch + padding : 0;

  const drawLines = (lines: readonly LaidLine[], index: number, inset: number): void => {
    let y = sheet.y + padding;
    for (const line of lines) {
      const right = columns[index]!.align === 'right';
      sheet.put(line.text, right ? lefts[index]! + widths[index]! : lefts[index]! + inset, y, line.style, right ? 'right' : 'left');
      y += line.style.pitch;
    }
  };

  let headDrawn = false;
  const drawHead = (): void => {
    if (!showHead) return;
    const draw = (index: number): void => {
      headLines[index]!.forEach((line, n) => {
        const right = columns[index]!.align === 'right';
        sheet.put(line, right ? lefts[index]! + widths[index]! : lefts[index]!, sheet.y + n * TEXT.tableHead.pitch, TEXT.tableHead, right ? 'right' : 'left');
      });
    };
    if (headDrawn) sheet.artifact(() => columns.forEach((_, index) => draw(index)), 'Pagination');
    else {
      const row = sheet.child(element, 'TR');
      columns.forEach((_, index) => sheet.within(sheet.child(row, 'TH', { scope: 'Column' } as PDFKit.Mixins.StructureElementOptions), 'TH', () => draw(index)));
      headDrawn = true;
    }
    sheet.y += headHeight;
    sheet.rule(sheet.y, 'line', 0.6, x, x + width);
  };

  /** Room for the smallest start of a row: the head and one line. */
  const laid = rows.map((row) => columns.map((column, index) => layCell(sheet, row[index] ?? cell(''), column, widths[index]!)));
  const rowHeight = (cells: readonly LaidCell[]): number => Math.max(...cells.map((c) => heightOf(c.lines))) + 2 * padding;

  if (laid[0]) sheet.ensure(headHeight + Math.min(rowHeight(laid[0]), sheet.bodyHeight / 2));
  drawHead();
  for (const [index, cells] of laid.entries()) {
    const height = rowHeight(cells);
    // The last row does not stand alone under a repeated head: the one before it goes with it.
    const both = index > 0 && index === laid.length - 2 ? height + rowHeight(laid[index + 1]!) : 0;
    if (both > sheet.room && both <= sheet.bodyHeight - headHeight) { sheet.newPage(); drawHead(); }
    if (height > sheet.room && (height <= sheet.bodyHeight - headHeight || sheet.room < sheet.bodyHeight / 3)) { sheet.newPage(); drawHead(); }
    const row = sheet.child(element, 'TR');
    const elements = columns.map((column) => sheet.child(row, column.rowHead ? 'TH' : 'TD', (column.rowHead ? { scope: 'Row' } : {}) as PDFKit.Mixins.StructureElementOptions));
    let rest = cells.map((c) => c.lines);
    let first = true;
    for (;;) {
      const takes = rest.map((lines) => (lines.length === 0 ? 0 : linesWithin(lines, sheet.room - 2 * padding)));
      const now = rest.map((lines, index) => lines.slice(0, takes[index]));
      columns.forEach((column, index) => {
        const sign = first ? cells[index]!.sign : undefined;
        if (sign) sheet.artifact(() => sign.draw(lefts[index]!, sheet.y + padding));
        if (first) cells[index]!.promise?.(sheet.pageIndex, column.align === 'right' ? lefts[index]! + widths[index]! : lefts[index]!, sheet.y + padding, elements[index]!);
        else if (now[index]!.length === 0) return;
        if (now[index]!.some((line) => line.text !== '')) sheet.within(elements[index]!, column.rowHead ? 'TH' : 'TD', () => drawLines(now[index]!, index, cells[index]!.sign?.width ?? 0));
      });
      sheet.y += Math.max(...now.map(heightOf)) + 2 * padding;
      rest = rest.map((lines, index) => lines.slice(takes[index]));
      first = false;
      if (rest.every((lines) => lines.length === 0)) break;
      sheet.newPage();
      drawHead();
    }
    sheet.rule(sheet.y, lineInk, 0.6, x, x + width);
  }
}
