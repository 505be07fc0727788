import { canonicalScalar } from '../../app/custody/canonical-scalar.ts';
import { sha256 } from './sha256.ts';

export type StoredValue = string | number | null | Uint8Array;

/** Makes digests of the rows of a table. */
export type RowDigester = {
  /** The columns in the order in which `digest` wants their values: that of RFC 8785. */
  readonly columns: readonly string[];
  /** Digest of the row whose values of `columns` stand from `from` on. */
  digest(values: readonly unknown[], from: number): string;
};

/** One for each list of columns: names are sorted and written as they stand in the text only once. */
const digesters = new WeakMap<readonly string[], RowDigester>();

export function rowDigester(wanted: readonly string[]): RowDigester {
  const known = digesters.get(wanted);
  if (known !== undefined) return known;
  const columns = [...new Set(wanted)].sort();
  const names = columns.map((column) => `${canonicalScalar(column)}:`);
  const made: RowDigester = {
    columns,
    digest(values, from) {
      let text = '';
      for (let i = 0; i < names.length; i++) {
        const value = values[from + i] as StoredValue | undefined;
        if (value === null || value === undefined) continue;
        const said = value instanceof Uint8Array ? `{"sha256":"${sha256(value)}"}` : canonicalScalar(value);
        text += text === '' ? names[i]! + said : `,${names[i]!}${said}`;
      }
      return sha256(`{${text}}`);
    },
  };
  digesters.set(wanted, made);
  return made;
}

/**
 * Digest of a row as it is stored: SHA-256 over the RFC 8785 form of an object with one member for each of `columns`.
 * Bytes stand in it by their own SHA-256. A column that is NULL is left out, so that a later version may add one without changing what was vouched for.
 */
export function rowDigest(row: Readonly<Record<string, StoredValue>>, columns: readonly string[]): string {
  const digester = rowDigester(columns);
  return digester.digest(digester.columns.map((column) => row[column]), 0);
}
