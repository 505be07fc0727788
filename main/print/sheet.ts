import PDFDocument from 'pdfkit';
import type { Ink } from '../../app/figure/figure-model.ts';
import { breakLines } from '../../app/report/break-lines.ts';
import { cleanText } from '../../app/report/printable-text.ts';
import { writeFileId, writeOutputIntent, writeRemark } from './archive-form.ts';
import { attachFiles, type Attachment } from './attachments.ts';
import { FontBook, RISE } from './font-book.ts';
import { MARGINS, PAGE_POINTS, PAPER_INKS, type PageSize, type TextStyle } from './paper.ts';
import { writeEscapedMetadata } from './metadata.ts';

export type Element = PDFKit.PDFStructureElement;

export type SheetOptions = {
  readonly pageSize: PageSize;
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  readonly language: string;
  /** Stands in the file as its date, so that the same content gives the same bytes. */
  readonly createdAt: Date;
  /** Free height at the top of every page after the first, for the running head. */
  readonly runningHead: number;
  /** SHA-256 of what the document says: the file is known by it. */
  readonly digest: string;
  /** A remark near the beginning of the file, for whoever looks at its bytes. */
  readonly remark?: string;
};

/** The part of pdfkit's font that text is written with; its typings leave it out. */
type DrawnFace = { readonly id: string; ref(): unknown; encode(text: string): [string[], unknown] };

/** A document in the making: where the pen stands, what fits, and the structure that a reading program follows. All lengths in points, y downwards. */
export class Sheet {
  readonly doc: PDFKit.PDFDocument;
  readonly fonts: FontBook;
  readonly root: Element;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly pageWidth: number;
  readonly pageHeight: number;
  y: number;
  readonly #runningHead: number;

  constructor(options: SheetOptions) {
    const size = PAGE_POINTS[options.pageSize];
    this.doc = new PDFDocument({
      size: [size.width, size.height], margin: 0, bufferPages: true, autoFirstPage: false, tagged: true, displayTitle: true,
      lang: options.language, pdfVersion: '1.7',
      // No standard font: an empty name keeps the library from loading one.
      font: '',
      info: {
        Title: cleanText(options.title), Author: cleanText(options.author), Subject: cleanText(options.subject),
        Creator: 'Culet', Producer: 'Culet', CreationDate: options.createdAt, ModDate: options.createdAt,
      },
    });
    writeEscapedMetadata(this.doc);
    if (options.remark !== undefined) writeRemark(this.doc, options.remark);
    writeFileId(this.doc, options.digest);
    writeOutputIntent(this.doc);
    this.fonts = new FontBook(this.doc);
    this.pageWidth = size.width;
    this.pageHeight = size.height;
    this.left = MARGINS.left;
    this.right = size.width - MARGINS.right;
    this.bottom = size.height - MARGINS.bottom;
    this.#runningHead = options.runningHead;
    this.doc.addPage();
    this.y = MARGINS.top;
    this.root = this.doc.struct('Document');
    this.doc.addStructure(this.root);
  }

  get width(): number { return this.right - this.left; }
  /** Height left on this page. */
  get room(): number { return this.bottom - this.y; }
  /** Height of the text area of a page that carries the running head. */
  get bodyHeight(): number { return this.bottom - MARGINS.top - this.#runningHead; }
  /** Number of the page the pen is on, from 0. */
  get pageIndex(): number { return this.doc.bufferedPageRange().count - 1; }
  /** True where nothing stands yet under the running head. */
  get atTop(): boolean { return this.pageIndex > 0 && this.y <= MARGINS.top + this.#runningHead + 0.01; }

  newPage(): void {
    this.doc.addPage();
    this.y = MARGINS.top + this.#runningHead;
  }

  /** Begins a new page unless this height still fits. What can't fit on any page is left to its caller to divide. */
  ensure(height: number): void {
    if (height > this.room && !this.atTop) this.newPage();
  }

  child(parent: Element, type: string, options: PDFKit.Mixins.StructureElementOptions = {}): Element {
    const element = this.doc.struct(type, options);
    parent.add(element);
    return element;
  }

  /** Draws inside an element of the structure. */
  within(element: Element, tag: string, draw: () => void): void {
    const content = this.doc.markStructureContent(tag);
    draw();
    this.doc.endMarkedContent();
    element.add(content);
  }

  /** Draws something that carries no content: rules, running heads. */
  artifact(draw: () => void, type: 'Layout' | 'Pagination' = 'Layout'): void {
    this.doc.markContent('Artifact', { type });
    draw();
    this.doc.endMarkedContent();
  }

  lines(text: string, width: number, style: TextStyle, atMost?: number): string[] {
    return breakLines(cleanText(text), width, (t) => this.fonts.width(t, style.font, style.size), atMost);
  }

  /** One line of text; y is the upper edge of its line box. Returns the width drawn. */
  put(text: string, x: number, y: number, style: TextStyle, align: 'left' | 'right' | 'center' = 'left'): number {
    const width = this.fonts.width(text, style.font, style.size);
    const start = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
    this.putAt(text, start, y + baselineOf(style), style);
    return width;
  }

  /** The same with the baseline given. */
  putAt(text: string, x: number, baseline: number, style: Pick<TextStyle, 'font' | 'size' | 'ink'>): void {
    let at = x;
    for (const run of this.fonts.shape(text, style.font)) {
      const size = run.rise === 'base' ? style.size : style.size * RISE.scale;
      const shift = run.rise === 'base' ? 0 : RISE[run.rise] * style.size;
      this.doc.font(run.key).fontSize(size).fillColor(PAPER_INKS[style.ink]);
      if (run.means === run.text) this.doc.text(run.text, at, baseline - shift, { lineBreak: false, baseline: 'alphabetic' });
      else this.#standIn(run.text, run.means, at, baseline - shift, size);
      at += run.advance * style.size;
    }
  }

  /**
   * Draws letters that stand for others: readers that copy or read aloud take what is meant. Written out here, because some readers place
   * the meant letters with the coordinates and the face in force at the end of the mark, which the library has put back by then.
   */
  #standIn(text: string, means: string, x: number, baseline: number, size: number): void {
    const { doc } = this;
    const { _font: face, page } = doc as unknown as { _font: DrawnFace; page: { fonts: Record<string, unknown>; height: number } };
    page.fonts[face.id] ??= face.ref();
    const [codes] = face.encode(text);
    doc.save().transform(1, 0, 0, -1, 0, page.height).addContent(`/${face.id} ${size} Tf`);
    doc.markContent('Span', { actual: means });
    doc.addContent(`BT\n1 0 0 1 ${x.toFixed(3)} ${(page.height - baseline).toFixed(3)} Tm\n<${codes.join('')}> Tj\nET`);
    doc.endMarkedContent();
    doc.restore();
  }

  rule(y: number, ink: Ink = 'line2', width = 0.6, x1 = this.left, x2 = this.right): void {
    this.artifact(() => { this.doc.lineWidth(width).strokeColor(PAPER_INKS[ink]).moveTo(x1, y).lineTo(x2, y).stroke(); });
  }

  /** A place in the list of contents that the reader's window shows; returns it as a parent for further ones. */
  bookmark(title: string, parent: PDFKit.PDFOutline = this.doc.outline): PDFKit.PDFOutline {
    // The library counts "left" from the right edge of the page.
    return parent.addItem(cleanText(title), { expanded: false, top: Math.max(0, this.y - 8), left: this.pageWidth } as { expanded?: boolean });
  }

  /** Ends the document, with the files that go with it, and gives its bytes. */
  finish(files: readonly Attachment[] = []): Promise<Uint8Array<ArrayBuffer>> {
    return new Promise((resolve, reject) => {
      const chunks: Buffer[] = [];
      this.doc.on('data', (chunk: Buffer) => chunks.push(chunk));
      this.doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
      this.doc.on('error', reject);
      // The pages first: what is attached then lies in one stretch of the file.
      this.doc.flushPages();
      countBookmarks(this.doc.outline);
      attachFiles(this.doc, files);
      this.doc.end();
    });
  }
}

/** Distance of the baseline from the upper edge of a line box: letters centred on their x-height and descent. */
const baselineOf = (style: TextStyle): number => style.pitch / 2 + style.size * 0.34;

type Outline = { readonly children: readonly Outline[]; readonly outlineData: Record<string, unknown> };

/** Says of each bookmark how many it holds, which the library leaves out: negative where they are folded (ISO 32000-1, 12.3.3). */
function countBookmarks(root: PDFKit.PDFOutline): void {
  const fold = ({ children, outlineData }: Outline): void => {
    if (children.length > 0) outlineData['Count'] = -children.length;
    children.forEach(fold);
  };
  const { children, outlineData } = root as unknown as Outline;
  if (children.length > 0) outlineData['Count'] = children.length;
  children.forEach(fold);
}
