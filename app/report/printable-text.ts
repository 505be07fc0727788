/** Signs that the printing faces lack and that have a plain way of writing. */
const PLAIN_WAYS: Readonly<Record<string, string>> = {
  '≤': '<=', '≥': '>=', '≈': '~', '→': '->', '←': '<-', '↔': '<->', '‑': '-', '‐': '-', '⁄': '/', '∕': '/',
  'ﬁ': 'fi', 'ﬂ': 'fl', '℃': '°C', '✓': 'yes', '✗': 'no', '●': '·', '•': '·',
  '\u2000': ' ', '\u2001': ' ', '\u2002': ' ', '\u2003': ' ', '\u2004': ' ', '\u2005': ' ', '\u2006': ' ', '\u2007': ' ',
  '\u2008': ' ', '\u2009': ' ', '\u200a': ' ', '\u202f': '\u00a0', '\u3000': ' ', '\t': ' ',
};

/** Raised and lowered signs: the faces carry only three of them, so all are drawn from their plain sign. */
const SUPERSCRIPTS: Readonly<Record<string, string>> = {
  '⁰': '0', '¹': '1', '²': '2', '³': '3', '⁴': '4', '⁵': '5', '⁶': '6', '⁷': '7', '⁸': '8', '⁹': '9', '⁺': '+', '⁻': '−', 'ⁿ': 'n',
};
const SUBSCRIPTS: Readonly<Record<string, string>> = {
  '₀': '0', '₁': '1', '₂': '2', '₃': '3', '₄': '4', '₅': '5', '₆': '6', '₇': '7', '₈': '8', '₉': '9', '₊': '+', '₋': '−',
};

/** What stands for a letter that no face holds; a reader sees that something is missing. */
export const REPLACEMENT = '[?]';

export type TextPiece = {
  /** What is drawn. */
  readonly text: string;
  /** What it means, for copying and reading aloud; the same as text unless drawn otherwise. */
  readonly means: string;
  readonly rise: 'base' | 'raised' | 'lowered';
};

const INVISIBLE = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufe00-\ufe0f\ufeff]/gu;

/** Composed letters, no control or direction signs, plain ways where the faces have no sign. Line feeds stay. */
export function cleanText(text: string): string {
  const composed = text.normalize('NFC').replace(/\r\n?/g, '\n').replace(INVISIBLE, '');
  return Array.from(composed, (sign) => PLAIN_WAYS[sign] ?? sign).join('');
}

/** Splits cleaned text where it is drawn raised or lowered. */
export function splitByRise(text: string): TextPiece[] {
  const pieces: TextPiece[] = [];
  for (const sign of text) {
    const raised = SUPERSCRIPTS[sign];
    const lowered = SUBSCRIPTS[sign];
    const rise = raised !== undefined ? 'raised' : lowered !== undefined ? 'lowered' : 'base';
    const drawn = raised ?? lowered ?? sign;
    const last = pieces.at(-1);
    if (last && last.rise === rise) pieces[pieces.length - 1] = { rise, text: last.text + drawn, means: last.means + sign };
    else pieces.push({ rise, text: drawn, means: sign });
  }
  return pieces;
}

/** "U+5B9D" for a sign that can't be printed. */
export const codePointName = (sign: string): string => `U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
