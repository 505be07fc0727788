import { fold } from '../fold.ts';

/** Longest text of one entry that is looked through, in characters. */
const LONGEST = 20_000;
/** A joined form ("a1" of "a-1") helps with labels and numbers, not with long words. */
const LONGEST_JOINED = 24;
/** Words looked for: a person types few. */
const MOST_TERMS = 8;
/** The index holds runs of three characters; shorter words are found at the beginning of a word. */
const GRAM = 3;

const EDGES = /^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu;
const INNER = /[^\p{L}\p{N}]+/u;

/** Text in the one form in which it is indexed and looked for: without case, accents, ligatures and full-width forms. */
const plain = (text: string): string => fold(text.normalize('NFKC')).replaceAll('ß', 'ss').replaceAll('ς', 'σ');

const words = (text: string): string[] => plain(text).replace(/[\u0000-\u001f\u007f]/g, ' ').split(/\s+/).filter((word) => word !== '');

const trimmed = (word: string): string => word.replace(EDGES, '') || word;

/** "c-2026-0012" also as "c", "2026", "0012", "12" and "c20260012": numbers and labels are found whole and in part. */
function forms(word: string): string[] {
  const whole = trimmed(word);
  const parts = whole.split(INNER).filter((part) => part !== '');
  if (parts.length < 2) return [whole];
  const withoutZeros = parts.filter((part) => /^0+\d/.test(part)).map((part) => part.replace(/^0+/, ''));
  const joined = parts.join('');
  return [whole, ...parts, ...withoutZeros, ...(joined.length <= LONGEST_JOINED ? [joined] : [])];
}

/** What is written into the index for some texts: every word between two spaces, so that its beginning and its end can be asked for. */
export function indexedText(texts: readonly string[]): string {
  const all = new Set<string>();
  for (const word of words(texts.join(' ').slice(0, LONGEST))) for (const form of forms(word)) all.add(form);
  return all.size === 0 ? '' : `  ${[...all].join('  ')}  `;
}

/** The words of what a person typed, at most eight of them. */
export const searchTerms = (text: string): string[] => [...new Set(words(text).map(trimmed))].slice(0, MOST_TERMS);

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** FTS5 query for entries that hold every term: anywhere in a word, or, where the term is shorter than three characters, at its beginning. */
export const matchPartly = (terms: readonly string[]): string =>
  terms.map((term) => quoted([...term].length >= GRAM ? term : `  ${term}`)).join(' AND ');

/** FTS5 query for entries that hold every term as a whole word. */
export const matchWholly = (terms: readonly string[]): string => terms.map((term) => quoted(`  ${term}  `)).join(' AND ');

/** Whether a text holds a term, as the index would find it. */
export function holdsTerm(text: string, term: string): boolean {
  return indexedText([text]).includes([...term].length >= GRAM ? term : `  ${term}`);
}
