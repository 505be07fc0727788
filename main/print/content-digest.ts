import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** SHA-256 over the canonical JSON (RFC 8785) of what a document says, in hexadecimal: two prints of the same content carry the same digits. */
export function contentDigest(content: unknown): string {
  const text = canonicalize(content);
  if (text === undefined) throw new Error('a document without content has no digest');
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/** The first twelve digits in groups of four, for the foot of a page. */
export const shortDigest = (digest: string): string => (digest.slice(0, 12).match(/.{4}/g) ?? []).join(' ');
