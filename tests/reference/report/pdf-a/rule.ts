import type { PdfFile } from './pdf-file.ts';

/**
 * One rule of ISO 19005-3:2012 (PDF/A-3), level B, under its clause. The wording is our own; clauses and conditions are those of the public
 * validation profile for PDF/A-3B (veraPDF consortium, PDF_A/PDFA-3B.xml). The standard itself was not at hand.
 */
export type Rule = { readonly clause: string; readonly says: string; readonly faults: (file: PdfFile) => string[] };

/** A sentence for each of those that do not hold. */
export const each = <T>(things: readonly T[], holds: (thing: T) => boolean, words: (thing: T) => string): string[] => things.filter((thing) => !holds(thing)).map(words);

/** One sentence where it does not hold. */
export const whether = (holds: boolean, words: string): string[] => (holds ? [] : [words]);
