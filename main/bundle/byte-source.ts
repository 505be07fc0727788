import { closeSync, fstatSync, openSync, readSync } from 'node:fs';

/** Bytes that can be looked into anywhere. */
export type ByteSource = {
  readonly size: number;
  /** Fewer than asked for only at the end. */
  read(at: number, length: number): Uint8Array;
  close(): void;
};

export const bytesSource = (bytes: Uint8Array): ByteSource => ({ size: bytes.byteLength, read: (at, length) => bytes.subarray(at, at + length), close() { /* nothing is open */ } });

/** A file, read where it is needed. Throws where it can't be opened. */
export function fileSource(file: string): ByteSource {
  const handle = openSync(file, 'r');
  const { size } = fstatSync(handle);
  return {
    size,
    read(at, length) {
      const piece = new Uint8Array(Math.max(0, Math.min(length, size - at)));
      let done = 0;
      while (done < piece.byteLength) {
        const got = readSync(handle, piece, done, piece.byteLength - done, at + done);
        if (got === 0) break;
        done += got;
      }
      return piece.subarray(0, done);
    },
    close() { closeSync(handle); },
  };
}
