import { readFileSync } from 'node:fs';
import { cleanText, codePointName, REPLACEMENT, splitByRise } from '../../app/report/printable-text.ts';
import { filesOf, type FontFile, type FontRole } from './font-files.ts';
import { woffToSfnt } from './woff-to-sfnt.ts';

/** The part of pdfkit's embedded font that is used here; its typings leave it out. */
type EmbeddedFace = {
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
  readonly ascender: number;
  widthOfString(text: string, size: number): number;
};

/** A stretch of text drawn from one font file. */
export type Run = {
  readonly key: string;
  readonly text: string;
  readonly means: string;
  readonly rise: 'base' | 'raised' | 'lowered';
  /** Advance for a font size of 1. */
  readonly advance: number;
};

/** Size and shift of raised and lowered signs, in parts of the font size: common typographic practice, no source. */
export const RISE = { scale: 0.66, raised: 0.34, lowered: -0.14 } as const;

const contents = new Map<string, Buffer>();
function contentOf(file: FontFile): Buffer {
  let bytes = contents.get(file.path);
  if (bytes === undefined) contents.set(file.path, bytes = woffToSfnt(readFileSync(file.path)));
  return bytes;
}

/** The faces of one document: finds for each letter the file that holds it, measures, and remembers what no file holds. */
export class FontBook {
  readonly #doc: PDFKit.PDFDocument;
  readonly #faces = new Map<string, EmbeddedFace>();
  readonly #homes = new Map<string, FontFile | null>();
  readonly #shaped = new Map<string, readonly Run[]>();
  /** Letters that could not be printed, in order of first meeting. */
  readonly unprintable = new Set<string>();

  constructor(doc: PDFKit.PDFDocument) {
    this.#doc = doc;
  }

  #face(file: FontFile): EmbeddedFace {
    const known = this.#faces.get(file.key);
    if (known) return known;
    this.#doc.registerFont(file.key, contentOf(file)).font(file.key);
    const face = (this.#doc as unknown as { _font: EmbeddedFace })._font;
    this.#faces.set(file.key, face);
    return face;
  }

  /** The file that holds a letter for a face, or null. */
  #home(role: FontRole, sign: string): FontFile | null {
    const key = `${role}:${sign}`;
    const known = this.#homes.get(key);
    if (known !== undefined) return known;
    const codePoint = sign.codePointAt(0) ?? 0;
    const home = filesOf(role).find((file) => this.#face(file).font.hasGlyphForCodePoint(codePoint)) ?? null;
    this.#homes.set(key, home);
    return home;
  }

  /** Splits a text without line feeds into runs; a letter that no file holds becomes a visible replacement and is remembered. */
  shape(text: string, role: FontRole): readonly Run[] {
    const key = `${role}:${text}`;
    const known = this.#shaped.get(key);
    if (known) return known;
    const runs: Run[] = [];
    for (const piece of splitByRise(cleanText(text))) {
      const meanings = Array.from(piece.means);
      let open: { file: FontFile; text: string; means: string } | null = null;
      const close = (): void => {
        if (!open) return;
        const advance = this.#face(open.file).widthOfString(open.text, 1) * (piece.rise === 'base' ? 1 : RISE.scale);
        runs.push({ key: open.file.key, text: open.text, means: open.means, rise: piece.rise, advance });
        open = null;
      };
      for (const [index, sign] of Array.from(piece.text).entries()) {
        const home = this.#home(role, sign);
        if (!home) this.unprintable.add(sign);
        const file: FontFile = home ?? filesOf(role)[0]!;
        const drawn = home ? sign : REPLACEMENT;
        const means = home ? meanings[index] ?? sign : sign;
        const current = open as { file: FontFile; text: string; means: string } | null;
        if (current && current.file.key === file.key) open = { file, text: current.text + drawn, means: current.means + means };
        else { close(); open = { file, text: drawn, means }; }
      }
      close();
    }
    this.#shaped.set(key, runs);
    return runs;
  }

  /** Width in points. */
  width(text: string, role: FontRole, size: number): number {
    let advance = 0;
    for (const run of this.shape(text, role)) advance += run.advance;
    return advance * size;
  }

  /** What a reader is told about letters that are missing, or null when nothing is. */
  notice(): string | null {
    if (this.unprintable.size === 0) return null;
    const names = Array.from(this.unprintable, codePointName);
    const shown = names.slice(0, 24).join(', ') + (names.length > 24 ? ` and ${names.length - 24} more` : '');
    return `The printing faces hold Latin, Greek and Cyrillic letters. Where “${REPLACEMENT}” stands, a letter could not be printed: ${shown}. The casebook keeps the text in full.`;
  }
}
