/**
 * Values of the contract as JSON, where what JSON cannot carry stands as an object with one key that begins with `$`:
 *
 *     Uint8Array    {"$bytes": what stands for the bytes}
 *     Float64Array  {"$floats": what stands for its little-endian bytes, eight for a number}
 *     NaN, ±∞, -0   {"$number": "NaN" | "Infinity" | "-Infinity" | "-0"}
 *     a plain object whose only key is one of these four: {"$object": {…the object itself…}}
 *
 * What stands for bytes is up to the caller: their text, or how many of them follow elsewhere.
 * `undefined` is left out of objects, as JSON does; in a list it becomes null.
 */
const BYTES = '$bytes';
const FLOATS = '$floats';
const NUMBER = '$number';
const OBJECT = '$object';
const TAGS: ReadonlySet<string> = new Set([BYTES, FLOATS, NUMBER, OBJECT]);

/** Where bytes go while a value is packed: gives what stands for them. */
export type PutBytes = (bytes: Uint8Array) => unknown;

/** Where bytes come from while it is unpacked: a copy of its own. @throws where what stands there is malformed */
export type TakeBytes = (standsThere: unknown) => Uint8Array<ArrayBuffer>;

/** JSON of a value. Time and space grow linearly with its size. @throws where it holds something that would arrive as another thing */
export function packJson(value: unknown, put: PutBytes): string {
  return JSON.stringify(pack(value, put)) ?? 'null';
}

/** The value of a JSON text. @throws where it is no JSON or a tagged value is malformed */
export function unpackJson(text: string, take: TakeBytes): unknown {
  return unpack(JSON.parse(text) as unknown, take);
}

function pack(value: unknown, put: PutBytes): unknown {
  if (typeof value === 'number') return packNumber(value);
  if (typeof value !== 'object' || value === null) return value;
  if (value instanceof Uint8Array) return { [BYTES]: put(value) };
  if (value instanceof Float64Array) return { [FLOATS]: put(littleEndianBytes(value)) };
  if (Array.isArray(value)) return value.map((element: unknown) => pack(element, put));
  if (isForeign(value)) throw new TypeError(`wire: cannot carry a ${value.constructor.name}`);
  const keys = Object.keys(value);
  const packed = Object.fromEntries(keys.map((key) => [key, pack((value as Record<string, unknown>)[key], put)]));
  return keys.length === 1 && TAGS.has(keys[0]!) ? { [OBJECT]: packed } : packed;
}

/** Dates, maps and other typed arrays would arrive as something else without anyone noticing. */
function isForeign(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype !== null && prototype !== Object.prototype;
}

function packNumber(value: number): unknown {
  if (Object.is(value, -0)) return { [NUMBER]: '-0' };
  return Number.isFinite(value) ? value : { [NUMBER]: String(value) };
}

/** Replaces tagged objects inside `value` in place: it comes fresh from JSON.parse and belongs to nobody else. */
function unpack(value: unknown, take: TakeBytes): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) {
    value.forEach((element: unknown, index) => { value[index] = unpack(element, take); });
    return value;
  }
  const record = value as Record<string, unknown>;
  const keys = Object.keys(record);
  if (keys.length === 1 && TAGS.has(keys[0]!)) return unpackTagged(keys[0]!, record[keys[0]!], take);
  return unpackFields(record, keys, take);
}

function unpackFields(record: Record<string, unknown>, keys: readonly string[], take: TakeBytes): unknown {
  for (const key of keys) record[key] = unpack(record[key], take);
  return record;
}

function unpackTagged(tag: string, content: unknown, take: TakeBytes): unknown {
  if (tag === OBJECT) {
    if (typeof content !== 'object' || content === null || Array.isArray(content)) throw new Error(`wire: ${OBJECT} must hold an object`);
    return unpackFields(content as Record<string, unknown>, Object.keys(content), take);
  }
  if (tag === BYTES) return take(content);
  if (tag === FLOATS) return floatsOf(take(content));
  if (typeof content !== 'string') throw new Error(`wire: ${tag} must hold a text`);
  return unpackNumber(content);
}

function unpackNumber(text: string): number {
  switch (text) {
    case '-0': return -0;
    case 'NaN': return NaN;
    case 'Infinity': return Infinity;
    case '-Infinity': return -Infinity;
    default: throw new Error(`wire: ${NUMBER} must hold -0, NaN, Infinity or -Infinity`);
  }
}

const BYTES_PER_FLOAT = 8;
const HOST_IS_LITTLE_ENDIAN = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;

function littleEndianBytes(floats: Float64Array): Uint8Array {
  if (HOST_IS_LITTLE_ENDIAN) return new Uint8Array(floats.buffer, floats.byteOffset, floats.byteLength);
  const view = new DataView(new ArrayBuffer(floats.byteLength));
  floats.forEach((value, index) => { view.setFloat64(index * BYTES_PER_FLOAT, value, true); });
  return new Uint8Array(view.buffer);
}

function floatsOf(bytes: Uint8Array<ArrayBuffer>): Float64Array {
  if (bytes.byteLength % BYTES_PER_FLOAT !== 0) throw new Error(`wire: ${FLOATS} must hold whole numbers of eight bytes`);
  if (HOST_IS_LITTLE_ENDIAN) return new Float64Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / BYTES_PER_FLOAT);
  const view = new DataView(bytes.buffer);
  return Float64Array.from({ length: bytes.byteLength / BYTES_PER_FLOAT }, (_unused, index) => view.getFloat64(index * BYTES_PER_FLOAT, true));
}
