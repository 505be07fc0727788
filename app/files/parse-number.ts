const isDigit = (c: number): boolean => c >= 48 && c <= 57;
const isSign = (c: number): boolean => c === 43 || c === 45 || c === 0x2212;

/** End of the run of digits that starts at `from`. */
function skipDigits(text: string, from: number): number {
  let i = from;
  while (i < text.length && isDigit(text.charCodeAt(i))) i += 1;
  return i;
}

/** True where `text` is one complete number with the given decimal mark (a char code). */
function isNumber(text: string, mark: number): boolean {
  const start = isSign(text.charCodeAt(0)) ? 1 : 0;
  let i = skipDigits(text, start);
  let digits = i - start;
  if (text.charCodeAt(i) === mark) {
    const from = i + 1;
    i = skipDigits(text, from);
    digits += i - from;
  }
  if (digits === 0) return false;
  if (i === text.length) return true;
  // E, e, and the D, d that Fortran programs write
  const letter = text.charCodeAt(i) | 32;
  if (letter !== 101 && letter !== 100) return false;
  i += 1;
  if (isSign(text.charCodeAt(i))) i += 1;
  const end = skipDigits(text, i);
  return end > i && end === text.length;
}

/**
 * One number, written completely and with nothing around it: sign, digits, one decimal mark, exponent.
 * Thousands separators, "NaN", "1.2.3" and overflows give undefined; nothing is guessed.
 */
export function parseNumber(text: string, decimalComma = false): number | undefined {
  if (text.length === 0 || text.length > 64 || !isNumber(text, decimalComma ? 44 : 46)) return undefined;
  let plain = decimalComma ? text.replace(',', '.') : text;
  if (plain.charCodeAt(0) === 0x2212) plain = `-${plain.slice(1)}`;
  let value = Number(plain);
  if (Number.isNaN(value)) value = Number(plain.replace(/[dD]/, 'e').replace('\u2212', '-'));
  return Number.isFinite(value) ? value : undefined;
}

/** Worth of the last digit as written: 0.0001 for "97.7404", 1 for "4400.", 1e-12 for "9.313E-9". */
export function lastDigitStep(text: string): number {
  const match = /^[^\d.,]*(\d*)(?:[.,](\d*))?(?:[eEdD]([+-]?\d+))?/.exec(text.trim());
  const decimals = match?.[2]?.length ?? 0;
  const exponent = Number(match?.[3] ?? 0);
  return 10 ** (exponent - decimals);
}
