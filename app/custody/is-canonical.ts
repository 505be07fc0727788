import { canonicalJson, type JsonValue } from './canonical-json.ts';

/** Members in the order of their UTF-16 code units, as RFC 8785, 3.2.3 asks, at every depth. */
function isSorted(value: unknown): boolean {
  if (value === null || typeof value !== 'object') return true;
  if (Array.isArray(value)) return value.every(isSorted);
  let before: string | null = null;
  // What comes from JSON.parse has own members only.
  for (const key in value) {
    if (before !== null && before >= key) return false;
    before = key;
    if (!isSorted((value as Readonly<Record<string, unknown>>)[key])) return false;
  }
  return true;
}

/**
 * Whether a text is the RFC 8785 form of the value it was parsed to. Numbers and strings are written there as JSON.stringify writes them,
 * so that a text which comes back from it unchanged and has its members in order is canonical; any other is written anew and compared.
 */
export function isCanonical(text: string, value: JsonValue): boolean {
  // Halves of surrogate pairs come back unchanged too, and have no canonical form: whatever is escaped is looked at the long way.
  if (!text.includes('\\u') && JSON.stringify(value) === text && isSorted(value)) return true;
  return canonicalJson(value) === text;
}
