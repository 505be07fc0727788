import { createHash } from 'node:crypto';
import { canonicalJson, type JsonValue } from '../../app/custody/canonical-json.ts';

/** SHA-256 of a text's UTF-8 bytes, in hexadecimal. */
export const textDigest = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** SHA-256 over the canonical JSON (RFC 8785) of what a document says, in hexadecimal: two prints of the same content carry the same digits. */
export const contentDigest = (content: JsonValue): string => textDigest(canonicalJson(content));

/** The first twelve digits in groups of four, for the foot of a page. */
export const shortDigest = (digest: string): string => (digest.slice(0, 12).match(/.{4}/g) ?? []).join(' ');
