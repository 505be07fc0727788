import { createHash } from 'node:crypto';
import type { ByteSource } from './byte-source.ts';

const PIECE = 1024 * 1024;

/** SHA-256 of the first bytes of a source, of all where `bytes` is left out; read in pieces. */
export function digestOf(source: ByteSource, bytes: number = source.size): string {
  const hash = createHash('sha256');
  for (let at = 0; at < bytes; at += PIECE) hash.update(source.read(at, Math.min(PIECE, bytes - at)));
  return hash.digest('hex');
}
