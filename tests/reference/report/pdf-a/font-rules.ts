import { PDFArray, PDFDict, PDFName, PDFNumber } from '@cantoo/pdf-lib';
import type { Operation } from './content-stream.ts';
import { operationsOfPage } from './graphics-rules.ts';
import { at, decoded, dictsOfType, isRawStream, listAt, nameAt, type PdfFile } from './pdf-file.ts';
import { each, whether, type Rule } from './rule.ts';
import { readTrueType } from './true-type.ts';

const SUBTYPES = new Set(['Type1', 'MMType1', 'TrueType', 'Type3', 'Type0', 'CIDFontType0', 'CIDFontType2']);
const PROGRAMS = ['FontFile', 'FontFile2', 'FontFile3'];
/** Widths in a font dictionary are whole thousandths of the size: half of one is rounding, as much again is leave. */
const WIDTH_MARGIN = 1;

/** Codes of two bytes of a text that is drawn. */
const codesIn = (text: string): number[] => Array.from({ length: text.length / 2 }, (_, i) => text.charCodeAt(2 * i) * 256 + text.charCodeAt(2 * i + 1));

/** What a page draws with each of its fonts, by the font's name among the page's resources. */
function drawnWith(operations: readonly Operation[]): Map<string, Set<number>> {
  const drawn = new Map<string, Set<number>>();
  let font = '';
  for (const { operator, operands } of operations) {
    if (operator === 'Tf') font = String(operands[0]).slice(1);
    if (!['Tj', 'TJ', '\'', '"'].includes(operator)) continue;
    const codes = drawn.get(font) ?? new Set();
    for (const operand of operands) if (typeof operand === 'object') for (const code of codesIn(operand.text)) codes.add(code);
    drawn.set(font, codes);
  }
  return drawn;
}

/** Every font that text is drawn with, and its codes. */
function usedFonts(file: PdfFile): { font: PDFDict; codes: Set<number> }[] {
  const used = new Map<PDFDict, Set<number>>();
  for (const page of file.doc.getPages()) {
    const resources = at(file, page.node, 'Resources');
    const fonts = resources instanceof PDFDict ? at(file, resources, 'Font') : undefined;
    for (const [name, codes] of drawnWith(operationsOfPage(file, page))) {
      const font = fonts instanceof PDFDict ? at(file, fonts, name) : undefined;
      if (!(font instanceof PDFDict)) throw new Error(`the page has no font ${name}`);
      used.set(font, new Set([...used.get(font) ?? [], ...codes]));
    }
  }
  return [...used].map(([font, codes]) => ({ font, codes }));
}

function descendantOf(file: PdfFile, font: PDFDict): PDFDict {
  const [descendant] = listAt(file, font, 'DescendantFonts');
  if (!(descendant instanceof PDFDict)) throw new Error(`${nameAt(file, font, 'BaseFont') ?? 'a font'} has no font of its own below it`);
  return descendant;
}

/** Widths of a CID font as its dictionary states them, thousandths of the size. */
function statedWidths(file: PdfFile, font: PDFDict): (cid: number) => number {
  const widths = new Map<number, number>();
  const list = listAt(file, font, 'W');
  const number = (value: unknown): number => (value instanceof PDFNumber ? value.asNumber() : Number.NaN);
  for (let i = 0; i < list.length;) {
    const next = list[i + 1];
    if (next instanceof PDFArray) {
      next.asArray().forEach((width, n) => widths.set(number(list[i]) + n, number(width)));
      i += 2;
    } else {
      for (let cid = number(list[i]); cid <= number(next); cid++) widths.set(cid, number(list[i + 2]));
      i += 3;
    }
  }
  const otherwise = at(file, font, 'DW');
  return (cid) => widths.get(cid) ?? (otherwise instanceof PDFNumber ? otherwise.asNumber() : 1000);
}

function faultsOfGlyphs(file: PdfFile, holds: (glyph: number, program: ReturnType<typeof readTrueType>, stated: (cid: number) => number) => boolean): string[] {
  return usedFonts(file).flatMap(({ font, codes }) => {
    const descendant = descendantOf(file, font);
    const descriptor = at(file, descendant, 'FontDescriptor');
    const program = descriptor instanceof PDFDict ? at(file, descriptor, 'FontFile2') : undefined;
    if (program === undefined || !isRawStream(program)) return [`${nameAt(file, font, 'BaseFont')} has no program that this reader knows`];
    const trueType = readTrueType(decoded(program));
    const stated = statedWidths(file, descendant);
    return each([...codes], (code) => holds(code, trueType, stated), (code) => `${nameAt(file, font, 'BaseFont')}: glyph ${code}`);
  });
}

const fonts = (file: PdfFile) => dictsOfType(file, 'Font');
const cidFonts = (file: PdfFile) => fonts(file).filter(({ dict }) => nameAt(file, dict, 'Subtype')?.startsWith('CIDFont') === true);
const descriptorOf = (file: PdfFile, font: PDFDict): PDFDict | null => { const found = at(file, font, 'FontDescriptor'); return found instanceof PDFDict ? found : null; };

/** Clause 6.2.11: fonts. Codes are glyphs here: composite fonts with Identity-H and an identity map, which the rules themselves ask for. */
export const FONT_RULES: readonly Rule[] = [
  { clause: '6.2.11.2', says: 'a font says what it is and what it is called', faults: (file) => each(fonts(file), ({ dict }) => SUBTYPES.has(nameAt(file, dict, 'Subtype') ?? '') && nameAt(file, dict, 'BaseFont') !== undefined, ({ ref }) => ref.toString()) },
  { clause: '6.2.11.3', says: 'composite fonts are coded by identity', faults: (file) => each(fonts(file).filter(({ dict }) => nameAt(file, dict, 'Subtype') === 'Type0'), ({ dict }) => nameAt(file, dict, 'Encoding') === 'Identity-H', ({ ref }) => ref.toString()) },
  { clause: '6.2.11.3', says: 'a CID font of TrueType outlines says how it maps to glyphs', faults: (file) => each(cidFonts(file).filter(({ dict }) => nameAt(file, dict, 'Subtype') === 'CIDFontType2'), ({ dict }) => at(file, dict, 'CIDToGIDMap') instanceof PDFName, ({ ref }) => ref.toString()) },
  { clause: '6.2.11.4', says: 'every font is embedded', faults: (file) => each(fonts(file).filter(({ dict }) => !['Type0', 'Type3'].includes(nameAt(file, dict, 'Subtype') ?? '')), ({ dict }) => { const descriptor = descriptorOf(file, dict); return descriptor !== null && PROGRAMS.filter((key) => at(file, descriptor, key) !== undefined).length === 1; }, ({ ref }) => ref.toString()) },
  { clause: '6.2.11.4', says: 'a font that lists its glyphs lists all of them; ours list none', faults: (file) => each(dictsOfType(file, 'FontDescriptor'), ({ dict }) => at(file, dict, 'CIDSet') === undefined && at(file, dict, 'CharSet') === undefined, ({ ref }) => ref.toString()) },
  { clause: '6.2.11.4', says: 'the program holds every glyph that is drawn', faults: (file) => faultsOfGlyphs(file, (glyph, { glyphs }) => glyph < glyphs) },
  { clause: '6.2.11.5', says: 'dictionary and program agree on the width of every glyph that is drawn', faults: (file) => faultsOfGlyphs(file, (glyph, { advance, unitsPerEm }, stated) => Math.abs(stated(glyph) - (1000 * advance(glyph)) / unitsPerEm) <= WIDTH_MARGIN) },
  { clause: '6.2.11.8', says: 'nothing is drawn that has no glyph', faults: (file) => faultsOfGlyphs(file, (glyph) => glyph !== 0) },
  { clause: '6.2.11', says: 'text is drawn at all', faults: (file) => whether(usedFonts(file).some(({ codes }) => codes.size > 10), 'there is no text') },
];
