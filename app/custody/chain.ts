import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson, type JsonValue } from './canonical-json.ts';
import { canonicalScalar } from './canonical-scalar.ts';

/** What the first entry of a ledger names as its predecessor: common practice for hash chains, no source. */
export const GENESIS = '0'.repeat(64);

/** What an entry states, without the digest of the one before. */
export type CustodyStatement = {
  readonly seq: number; readonly at: string; readonly person: string; readonly case: string; readonly item: string; readonly content: JsonValue;
};
export type AuditStatement = {
  readonly seq: number; readonly at: string; readonly person: string | null; readonly operation: string; readonly subject: string;
  readonly case: string | null; readonly content: JsonValue;
};

/** SHA-256 (FIPS 180-4) of UTF-8 text or bytes, as 64 lower-case hexadecimal digits. */
export function sha256Hex(data: string | Uint8Array): string {
  return bytesToHex(sha256(typeof data === 'string' ? utf8ToBytes(data) : data));
}

type KeptStatement = Omit<CustodyStatement, 'content'> | Omit<AuditStatement, 'content'>;

/**
 * What `entryHash` hashes, put together from a content that is known to be canonical, without writing that anew:
 * the members of a statement have fixed names, whose order is that of RFC 8785.
 */
export function hashedText(previous: string, kept: KeptStatement, content: string): string {
  const { at, case: of, person, seq } = kept;
  const start = `{"at":${canonicalScalar(at)},"case":${canonicalScalar(of)},"content":${content},`;
  return 'item' in kept
    ? `${start}"item":${canonicalScalar(kept.item)},"person":${canonicalScalar(person)},"previous":${canonicalScalar(previous)},"seq":${canonicalScalar(seq)}}`
    : `${start}"operation":${canonicalScalar(kept.operation)},"person":${canonicalScalar(person)},"previous":${canonicalScalar(previous)},"seq":${canonicalScalar(seq)},"subject":${canonicalScalar(kept.subject)}}`;
}

/**
 * Digest of a ledger entry: SHA-256 over the RFC 8785 form of the statement and the digest of the entry before.
 * `previous` is GENESIS for the first entry. Throws where the statement can't be written as canonical JSON.
 */
export function entryHash(previous: string, statement: CustodyStatement | AuditStatement): string {
  return sha256Hex(canonicalJson({ ...statement, previous }));
}
