import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js';
import { z } from 'zod';
import { canonicalJson, type JsonValue } from '../custody/canonical-json.ts';
import { err, ok, type Result } from '../result.ts';
import { statementBytes } from './signed-statement.ts';
import { verifySignature } from './verify-signature.ts';

const instant = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/);
/** Last entry of a ledger; entries are numbered from 1 without gaps, so its number is their count. 0 and 64 zeros while it is empty. */
const head = z.strictObject({ seq: z.number().int().min(0), hash: z.string().regex(/^[0-9a-f]{64}$/) });
export type Head = z.infer<typeof head>;

export const CHECKPOINT_REASONS = ['closing', 'report', 'day', 'entries', 'asked'] as const;
export type CheckpointReason = (typeof CHECKPOINT_REASONS)[number];

/** How far the ledgers of a casebook had come. `begun`: when the casebook was, which tells it from another. */
export const checkpointStatement = z.strictObject({
  statement: z.literal('culet-checkpoint-1'), laboratory: z.string(), begun: instant, at: instant, why: z.enum(CHECKPOINT_REASONS), audit: head, custody: head,
});
export type CheckpointStatement = z.infer<typeof checkpointStatement>;

/** A checkpoint with its signature; hexadecimal digits. */
const signedCheckpoint = z.strictObject({
  statement: checkpointStatement, publicKey: z.string().regex(/^[0-9a-f]{64}$/), signature: z.string().regex(/^[0-9a-f]{128}$/),
});
export type SignedCheckpoint = z.infer<typeof signedCheckpoint>;

/** Whether the signature is that of the key that stands beside it; whose key that is, is another question. */
export const isSigned = ({ statement, publicKey, signature }: SignedCheckpoint): boolean =>
  verifySignature(hexToBytes(publicKey), statementBytes(statement), hexToBytes(signature));

export const signedOf = (statement: CheckpointStatement, signed: { readonly publicKey: Uint8Array; readonly signature: Uint8Array }): SignedCheckpoint =>
  ({ statement, publicKey: bytesToHex(signed.publicKey), signature: bytesToHex(signed.signature) });

/** The small file that is kept apart from the casebook: one line of canonical JSON. */
export const writeCheckpointFile = (checkpoint: SignedCheckpoint): string => `${canonicalJson(checkpoint as unknown as JsonValue)}\n`;

/** Reads such a file. Fails with a sentence where it is none, or where its signature does not fit it. */
export function readCheckpointFile(text: string): Result<SignedCheckpoint, string> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return err('This file is no checkpoint of Culet.');
  }
  const checkpoint = signedCheckpoint.safeParse(parsed);
  if (!checkpoint.success) return err('This file is no checkpoint of Culet.');
  return isSigned(checkpoint.data) ? ok(checkpoint.data) : err('This checkpoint was altered: its signature does not fit it.');
}
