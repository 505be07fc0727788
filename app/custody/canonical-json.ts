import canonicalize from 'canonicalize';

export type JsonValue = null | boolean | number | string | readonly JsonValue[] | { readonly [key: string]: JsonValue | undefined };

/** Refuses what JSON would silently bend into something else: a missing array element would become null. */
function refuseHoles(value: unknown, path: string): void {
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i++) {
      if (value[i] === undefined) throw new TypeError(`canonical JSON: ${path}[${i}] has no value`);
      refuseHoles(value[i], `${path}[${i}]`);
    }
    return;
  }
  if (value === null || typeof value !== 'object') {
    if (typeof value === 'bigint' || typeof value === 'function' || typeof value === 'symbol') throw new TypeError(`canonical JSON: ${path} is a ${typeof value}`);
    return;
  }
  for (const [key, inner] of Object.entries(value)) refuseHoles(inner, `${path}.${key}`);
}

/**
 * The one text form of a JSON value that is hashed and signed: RFC 8785 (JSON Canonicalization Scheme).
 * Members that are undefined are left out. Throws a TypeError or Error on NaN, an infinity, a lone surrogate,
 * a hole in an array, a cycle, or a value JSON does not know: such a value never comes from a person, only from a fault.
 */
export function canonicalJson(value: JsonValue): string {
  refuseHoles(value, '$');
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError('canonical JSON: there is no value');
  return text;
}
