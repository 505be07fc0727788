import { readSync, writeSync } from 'node:fs';
import { deserialize, serialize } from 'node:v8';

/**
 * Messages on a pipe between two processes of the same program: four bytes of length, least first, then the message as the engine
 * itself writes values, with the bytes of typed arrays as they stand.
 */
const HEAD = 4;

/** Longer than anything that is found in a piece: whoever announces more is not the program. */
const LONGEST = 512 * 1024 * 1024;

export function frameOf(message: unknown): Buffer {
  const body = serialize(message);
  const head = Buffer.alloc(HEAD);
  head.writeUInt32LE(body.byteLength);
  return Buffer.concat([head, body]);
}

/** Puts messages together from what comes of a pipe in any cut. Throws where it is no message. */
export function createFrameReader(hear: (message: unknown) => void): (bytes: Buffer) => void {
  let parts: Buffer[] = [];
  let held = 0;
  let wanted = HEAD;
  let inBody = false;
  return (bytes) => {
    parts.push(bytes);
    held += bytes.byteLength;
    // Put together only when a whole message is there: a long one comes in a thousand cuts.
    while (held >= wanted) {
      const all = parts.length === 1 ? parts[0]! : Buffer.concat(parts, held);
      const piece = all.subarray(0, wanted);
      parts = held > wanted ? [all.subarray(wanted)] : [];
      held -= wanted;
      if (inBody) {
        hear(deserialize(piece));
        wanted = HEAD;
      } else {
        wanted = lengthIn(piece);
      }
      inBody = !inBody;
    }
  };
}

function lengthIn(head: Buffer): number {
  const length = head.readUInt32LE();
  if (length > LONGEST) throw new Error('not a message of the program');
  return length;
}

/** A pipe that has nothing or no room at the moment, where the system does not wait by itself. */
const WAIT_MS = 1;
const never = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));

const codeOf = (fault: unknown): string => (fault instanceof Error && 'code' in fault ? String(fault.code) : '');

function patiently(work: () => number): number {
  for (;;) {
    try {
      return work();
    } catch (fault) {
      if (codeOf(fault) !== 'EAGAIN') throw fault;
      Atomics.wait(never, 0, 0, WAIT_MS);
    }
  }
}

/** Waits for so many bytes; null where the other side is gone. */
function readWhole(fd: number, length: number): Buffer | null {
  const bytes = Buffer.alloc(length);
  for (let at = 0; at < length;) {
    let got: number;
    try {
      got = patiently(() => readSync(fd, bytes, at, length - at, null));
    } catch (fault) {
      // Windows says so instead of answering with nothing.
      if (codeOf(fault) === 'EOF' || codeOf(fault) === 'ECONNRESET' || codeOf(fault) === 'EPIPE') return null;
      throw fault;
    }
    if (got === 0) return null;
    at += got;
  }
  return bytes;
}

/** Waits for the next message, holding up everything else in this process; undefined where the other side is gone. */
export function readFrame(fd: number): unknown {
  const head = readWhole(fd, HEAD);
  const body = head === null ? null : readWhole(fd, lengthIn(head));
  return body === null ? undefined : deserialize(body);
}

/** Writes a message to its end, however long the other side takes. Throws where it is gone. */
export function writeFrame(fd: number, message: unknown): void {
  const bytes = frameOf(message);
  for (let at = 0; at < bytes.byteLength;) at += patiently(() => writeSync(fd, bytes, at, bytes.byteLength - at));
}
