import { canonicalJson } from './canonical-json.ts';

const PLAIN = /^[\x20\x21\x23-\x5b\x5d-\x7e]*$/;

/** RFC 8785 form of a value that holds no others. A string without anything to escape and a whole number are written as they stand. */
export function canonicalScalar(value: string | number | boolean | null): string {
  if (typeof value === 'string' && PLAIN.test(value)) return `"${value}"`;
  return Number.isSafeInteger(value) ? String(value) : canonicalJson(value);
}
