import { createHash } from 'node:crypto';
import { deflateSync, inflateSync } from 'node:zlib';
import { and, eq } from 'drizzle-orm';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { rawRecord } from '../schema/index.ts';
import { notFound } from './refusals.ts';

export type NewRawRecord = { readonly caseId: string; readonly name: string; readonly mediaType: string; readonly bytes: Uint8Array };
export type KeptRawRecord = { readonly id: string; readonly sha256: string; readonly size: number };
export type RawContent = { readonly name: string; readonly mediaType: string; readonly sha256: string; readonly size: number; readonly bytes: Uint8Array<ArrayBuffer> };

const digestOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

function pack(bytes: Uint8Array, mediaType: string): { packing: 'deflate' | 'stored'; content: Buffer } {
  const stored = { packing: 'stored' as const, content: Buffer.from(bytes) };
  // Pictures are compressed already: trying again costs time and gains nothing.
  if (mediaType.startsWith('image/')) return stored;
  const deflated = deflateSync(bytes);
  return deflated.byteLength < bytes.byteLength ? { packing: 'deflate', content: deflated } : stored;
}

/** Bytes as they came, from what is stored. Throws where the packing can't be undone. */
export function unpackRaw(packing: string, content: Buffer): Uint8Array<ArrayBuffer> {
  return new Uint8Array(packing === 'deflate' ? inflateSync(content) : content);
}

/**
 * Keeps bytes as they came, inside the caller's transaction, and writes their digest into the audit ledger:
 * there it can't be changed together with the record. Returns id, SHA-256 of the original bytes, and their number.
 */
export function putRawRecord(tx: WriteTx, deps: { newId(): string }, change: Change, record: NewRawRecord): KeptRawRecord {
  if (change.personId === null) throw new Error('putRawRecord: a raw record needs a person');
  const id = deps.newId();
  const sha256 = digestOf(record.bytes);
  const size = record.bytes.byteLength;
  tx.orm.insert(rawRecord).values({
    id, caseId: record.caseId, sha256, name: record.name, mediaType: record.mediaType, size,
    ...pack(record.bytes, record.mediaType), addedAt: change.at, addedBy: change.personId,
  }).run();
  appendAudit(tx, change, { subject: id, caseId: record.caseId, content: { rawRecord: { name: record.name, size }, digests: { [id]: sha256 } } });
  return { id, sha256, size };
}

/** The first record in a case with the same bytes, or null. */
export function sameBytesInCase(db: ReadDb | WriteTx, caseId: string, sha256: string): { id: string; name: string } | null {
  return db.orm.select({ id: rawRecord.id, name: rawRecord.name }).from(rawRecord)
    .where(and(eq(rawRecord.caseId, caseId), eq(rawRecord.sha256, sha256))).orderBy(rawRecord.addedAt).get() ?? null;
}

const bent = (name: string): { readonly ok: false; readonly error: Failure } => err({
  code: 'unreadable',
  message: `The stored bytes of “${name}” no longer have the digest they were kept with.`,
  next: 'Do not rely on this record. Verify the casebook, and restore a backup in which it is sound.',
});

/** The bytes as they came; refuses where they do not give the digest that was stored with them. */
export function readRawRecord(db: ReadDb | WriteTx, id: string): Result<RawContent, Failure> {
  const row = db.orm.select().from(rawRecord).where(eq(rawRecord.id, id)).get();
  if (!row) return notFound('That record');
  let bytes: Uint8Array<ArrayBuffer>;
  try {
    bytes = unpackRaw(row.packing, row.content);
  } catch {
    return bent(row.name);
  }
  if (bytes.byteLength !== row.size || digestOf(bytes) !== row.sha256) return bent(row.name);
  return ok({ name: row.name, mediaType: row.mediaType, sha256: row.sha256, size: row.size, bytes });
}

export type RawRecordsStore = { content(id: string): Promise<Result<RawContent, Failure>> };

export function createRawRecordsStore(handle: StoreHandle): RawRecordsStore {
  return { async content(id) { return readRawRecord(handle.read, id); } };
}
