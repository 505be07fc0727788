import { packJson, unpackJson } from './tagged-json.ts';

/**
 * How a value of the contract travels over the loopback host: one line of tagged JSON (UTF-8) and, where it holds bytes, a line feed
 * and the bytes themselves, one after the other in the order in which they stand in the JSON, where each has its count. As text they
 * would keep the window busy for the better part of a second with one large photograph.
 */

/** The media type of such a body. A page elsewhere cannot send it without asking first (Fetch standard, CORS-safelisted content types). */
export const WIRE_TYPE = 'application/octet-stream';

/** JSON escapes every line feed inside it: the first one ends it. */
const LINE_FEED = 0x0a;

/** The body of a value. @throws where it holds something that can't be carried */
export function encodeWire(value: unknown): Uint8Array<ArrayBuffer> {
  const behind: Uint8Array[] = [];
  const line = new TextEncoder().encode(packJson(value, (bytes) => { behind.push(bytes); return bytes.byteLength; }));
  if (behind.length === 0) return line;
  const body = new Uint8Array(behind.reduce((size, bytes) => size + bytes.byteLength, line.byteLength + 1));
  body.set(line);
  body[line.byteLength] = LINE_FEED;
  let at = line.byteLength + 1;
  for (const bytes of behind) {
    body.set(bytes, at);
    at += bytes.byteLength;
  }
  return body;
}

/** The value of a body; its bytes are copies. @throws where the line is not JSON, a tagged value is malformed, or bytes are missing or left over */
export function decodeWire(body: Uint8Array): unknown {
  const end = body.indexOf(LINE_FEED);
  const line = end < 0 ? body : body.subarray(0, end);
  const behind = new BytesBehind(end < 0 ? new Uint8Array(0) : body.subarray(end + 1));
  const value = unpackJson(new TextDecoder('utf-8', { fatal: true }).decode(line), (count) => behind.take(count));
  behind.end();
  return value;
}

/** The bytes behind the line, each given out once: a small body can't ask for more of them than it brought. */
class BytesBehind {
  readonly #bytes: Uint8Array;
  #at = 0;

  constructor(bytes: Uint8Array) { this.#bytes = bytes; }

  take(count: unknown): Uint8Array<ArrayBuffer> {
    if (typeof count !== 'number' || !Number.isInteger(count) || count < 0) throw new Error('wire: bytes must stand as their number');
    if (count > this.#bytes.byteLength - this.#at) throw new Error('wire: bytes are missing');
    const taken = new Uint8Array(count);
    taken.set(this.#bytes.subarray(this.#at, this.#at + count));
    this.#at += count;
    return taken;
  }

  end(): void {
    if (this.#at !== this.#bytes.byteLength) throw new Error('wire: bytes are left over');
  }
}
