import { pushNumber, type NumberList } from './number-list.ts';

/** What a line of `(X++(Y..Y))` ended with, or where and why it can't be read. */
export type ScanEnd =
  | { readonly kind: 'done'; readonly endsInDifference: boolean }
  | { readonly kind: 'bad'; readonly at: number; readonly why: string };

const isDigit = (c: number): boolean => c >= 48 && c <= 57;

const bad = (at: number, why: string): ScanEnd => ({ kind: 'bad', at, why });

/** Value of a leading pseudo-digit as sign·digit, or undefined. SQZ: @ A–I a–i; DIF: % J–R j–r (McDonald & Wilks, Appl. Spectrosc. 42 (1988) 151). */
function squeezed(c: number): number | undefined {
  if (c === 64) return 0;
  if (c >= 65 && c <= 73) return c - 64;
  return c >= 97 && c <= 105 ? 96 - c : undefined;
}
function difference(c: number): number | undefined {
  if (c === 37) return 0;
  if (c >= 74 && c <= 82) return c - 73;
  return c >= 106 && c <= 114 ? 105 - c : undefined;
}
/** DUP: S–Z, s; the count includes the value already written. */
function duplicates(c: number): number | undefined {
  if (c >= 83 && c <= 90) return c - 82;
  return c === 115 ? 9 : undefined;
}

/**
 * End of the plain number that starts at `from` (sign, digits, point, exponent); `from` itself where there is none.
 * In a compressed table "E" is a pseudo-digit unless a signed exponent follows it.
 */
export function plainNumberEnd(text: string, from: number, compressed: boolean): number {
  let i = from;
  let c = text.charCodeAt(i);
  if (c === 43 || c === 45) i += 1;
  const start = i;
  while (isDigit(text.charCodeAt(i))) i += 1;
  let digits = i - start;
  if (text.charCodeAt(i) === 46) {
    i += 1;
    const fraction = i;
    while (isDigit(text.charCodeAt(i))) i += 1;
    digits += i - fraction;
  }
  if (digits === 0) return from;
  c = text.charCodeAt(i) | 32;
  if (c !== 101 && (c !== 100 || compressed)) return i;
  let j = i + 1;
  const sign = text.charCodeAt(j);
  if (sign === 43 || sign === 45) j += 1;
  else if (compressed) return i;
  const exponent = j;
  while (isDigit(text.charCodeAt(j))) j += 1;
  return j > exponent ? j : i;
}

/** Value of `text` between the ends that plainNumberEnd gave. */
export function plainNumber(text: string, from: number, to: number): number {
  const number = Number(text.slice(from, to));
  return Number.isNaN(number) ? Number(text.slice(from, to).replace(/[dD]/, 'e')) : number;
}

/**
 * Appends the ordinates of one line, from character `from` on, in any of the forms AFFN, PAC, SQZ, DIF and DUP.
 * `?` (the standard's mark of an invalid ordinate) appends NaN. Stops before the list grows past `limit`.
 */
export function scanOrdinates(text: string, from: number, compressed: boolean, out: NumberList, limit: number): ScanEnd {
  let i = from;
  let last = Number.NaN;
  let step: number | undefined;
  let any = false;
  while (i < text.length) {
    const c = text.charCodeAt(i);
    if (c === 32 || c === 9 || c === 44 || c === 59 || c === 12 || c === 11 || c === 0xa0) {
      i += 1;
      continue;
    }
    const plainEnd = plainNumberEnd(text, i, compressed);
    if (plainEnd > i) {
      // "1.2.3": a second point is no separator
      if (text.charCodeAt(plainEnd) === 46) return bad(i, 'has two decimal points');
      last = plainNumber(text, i, plainEnd);
      step = undefined;
      pushNumber(out, last);
      any = true;
      i = plainEnd;
    } else if (c === 63) {
      last = Number.NaN;
      step = undefined;
      pushNumber(out, last);
      any = true;
      i += 1;
    } else {
      const leading = compressed ? (squeezed(c) ?? difference(c) ?? duplicates(c)) : undefined;
      if (leading === undefined) return bad(i, 'is no number');
      const negative = (c >= 97 && c <= 105) || (c >= 106 && c <= 114);
      let magnitude = Math.abs(leading);
      let j = i + 1;
      while (isDigit(text.charCodeAt(j))) {
        magnitude = magnitude * 10 + (text.charCodeAt(j) - 48);
        j += 1;
      }
      if (text.charCodeAt(j) === 46) {
        const fraction = j;
        j += 1;
        while (isDigit(text.charCodeAt(j))) j += 1;
        magnitude += Number(`0${text.slice(fraction, j)}0`);
      }
      const count = duplicates(c);
      if (count !== undefined) {
        if (!any) return bad(i, 'repeats a value, but no value stands before it on this line');
        if (magnitude < 1 || !Number.isInteger(magnitude) || out.length + magnitude - 1 > limit) return bad(i, 'repeats a value more often than the file has points');
        for (let n = 1; n < magnitude; n += 1) {
          if (step !== undefined) last += step;
          pushNumber(out, last);
        }
      } else {
        const value = negative ? -magnitude : magnitude;
        if (squeezed(c) !== undefined) {
          last = value;
          step = undefined;
        } else {
          if (!any || Number.isNaN(last)) return bad(i, 'is a difference, but no value stands before it');
          step = value;
          last += value;
        }
        pushNumber(out, last);
        any = true;
      }
      i = j;
    }
    if (out.length > limit) return bad(i - 1, 'is beyond the number of points that the file can have');
  }
  return any ? { kind: 'done', endsInDifference: step !== undefined } : bad(from, 'has an abscissa but no ordinate');
}
