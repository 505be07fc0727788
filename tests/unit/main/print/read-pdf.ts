import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type ReadPdf = {
  /** Text of each page in the order in which it is drawn. */
  readonly pages: readonly string[];
  /** The printed lines of each page from top to bottom, each from left to right. */
  readonly lines: readonly (readonly string[])[];
  readonly bookmarks: readonly string[];
  readonly info: Readonly<Record<string, unknown>>;
  readonly language: unknown;
  /** Roles of the structure of each page, and the alternative texts in it. */
  readonly roles: readonly (readonly string[])[];
  readonly alternatives: readonly string[];
};

type Node = { readonly role?: string; readonly alt?: string; readonly children?: readonly Node[] };

function walk(node: Node | null, visit: (node: Node) => void): void {
  if (!node) return;
  visit(node);
  for (const child of node.children ?? []) walk(child, visit);
}

type Mark = { readonly title: string; readonly items: readonly Mark[] };
const titles = (marks: readonly Mark[]): string[] => marks.flatMap((mark) => [mark.title, ...titles(mark.items)]);

type Placed = { readonly str: string; readonly hasEOL: boolean; readonly transform: readonly number[] };

/** Baselines closer than this belong to one line, in points. */
const SAME_LINE = 1.5;

function linesOf(items: readonly Placed[]): string[] {
  const rows: { y: number; items: Placed[] }[] = [];
  for (const item of items.filter((one) => one.str.trim() !== '')) {
    const y = item.transform[5]!;
    const row = rows.find((one) => Math.abs(one.y - y) < SAME_LINE);
    if (row) row.items.push(item);
    else rows.push({ y, items: [item] });
  }
  return rows.sort((a, b) => b.y - a.y).map((row) => row.items.sort((a, b) => a.transform[4]! - b.transform[4]!).map((item) => item.str).join(' '));
}

/** Reads a PDF with a reader that knows nothing of the writer. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const document = await task.promise;
  const pages: string[] = [];
  const lines: string[][] = [];
  const roles: string[][] = [];
  const alternatives: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const content = await page.getTextContent();
    const items = content.items.filter((item) => 'str' in item) as Placed[];
    pages.push(items.map((item) => item.str + (item.hasEOL ? '\n' : '')).join('').replace(/\s+/g, ' '));
    lines.push(linesOf(items));
    const seen: string[] = [];
    walk(await page.getStructTree() as Node | null, (node) => {
      if (node.role) seen.push(node.role);
      if (node.alt) alternatives.push(node.alt);
    });
    roles.push(seen);
  }
  const outline = (await document.getOutline() ?? []) as unknown as Mark[];
  const { info } = await document.getMetadata();
  const result: ReadPdf = {
    pages, lines, roles, alternatives, bookmarks: titles(outline), info: info as Record<string, unknown>, language: (info as Record<string, unknown>)['Language'],
  };
  await task.destroy();
  return result;
}

/** The files attached to a PDF, by name, as that reader finds them. */
export async function attachedTo(bytes: Uint8Array): Promise<Map<string, Uint8Array>> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const found = await (await task.promise).getAttachments() as Record<string, { readonly filename: string; readonly content: Uint8Array | null }> | null;
  await task.destroy();
  return new Map(Object.values(found ?? {}).map(({ filename, content }) => [filename, content ?? new Uint8Array()]));
}

/** The text of a page without any spaces, for words that a line break divides. */
export const squeezed = (text: string): string => text.replace(/\s+/g, '');
