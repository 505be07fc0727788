import { canonicalScalar } from '../../app/custody/canonical-scalar.ts';
import { sha256 } from './sha256.ts';

export type StoredValue = string | number | null | Uint8Array;

/** Columns in the order of RFC 8785, with their names as they stand in the text: sorted once for each table. */
const orders = new WeakMap<readonly string[], readonly { readonly column: string; readonly name: string }[]>();

function orderOf(columns: readonly string[]): readonly { readonly column: string; readonly name: string }[] {
  const known = orders.get(columns);
  if (known !== undefined) return known;
  const order = [...new Set(columns)].sort().map((column) => ({ column, name: `${canonicalScalar(column)}:` }));
  orders.set(columns, order);
  return order;
}

/**
 * Digest of a row as it is stored: SHA-256 over the RFC 8785 form of an object with one member for each of `columns`.
 * Bytes stand in it by their own SHA-256. A column that is NULL is left out, so that a later version may add one without changing what was vouched for.
 */
export function rowDigest(row: Readonly<Record<string, StoredValue>>, columns: readonly string[]): string {
  let text = '';
  for (const { column, name } of orderOf(columns)) {
    const value = row[column];
    if (value === null || value === undefined) continue;
    const said = value instanceof Uint8Array ? `{"sha256":"${sha256(value)}"}` : canonicalScalar(value);
    text += text === '' ? name + said : `,${name}${said}`;
  }
  return sha256(`{${text}}`);
}
