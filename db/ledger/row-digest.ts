import { createHash } from 'node:crypto';
import { canonicalJson, type JsonValue } from '../../app/custody/canonical-json.ts';

export type StoredValue = string | number | null | Uint8Array;

const sha256 = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');

/**
 * Digest of a row as it is stored: SHA-256 over the RFC 8785 form of an object with one member for each of `columns`.
 * Bytes stand in it by their own SHA-256. A column that is NULL is left out, so that a later version may add one without changing what was vouched for.
 */
export function rowDigest(row: Readonly<Record<string, StoredValue>>, columns: readonly string[]): string {
  const stated: Record<string, JsonValue> = {};
  for (const column of columns) {
    const value = row[column];
    if (value === null || value === undefined) continue;
    stated[column] = value instanceof Uint8Array ? { sha256: sha256(value) } : value;
  }
  return sha256(canonicalJson(stated));
}
