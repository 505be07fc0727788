import { z } from 'zod';
import { day, digest, instant } from '../contract/common.ts';
import { checkpointStatement } from '../signature/checkpoint-statement.ts';

const head = z.strictObject({ seq: z.number().int().nonnegative(), hash: digest });

/** Days, both counted in, in which the cases were received, in the laboratory's zone. */
export const period = z.strictObject({ from: day, to: day });
export type Period = z.infer<typeof period>;

/** audit.json of a case: what the audit ledger says of it, as it was hashed. */
export const auditDocument = z.object({
  schema: z.literal('culet-audit-1'),
  exportedAt: instant,
  caseNumber: z.string(),
  entries: z.array(z.object({
    /** What the digest is over: RFC 8785 canonical JSON of this object. */
    statement: z.object({
      seq: z.number().int().positive(), at: z.string(), person: z.string().nullable(), operation: z.string(), subject: z.string(),
      case: z.string().nullable(), content: z.record(z.string(), z.unknown()), previous: digest,
    }),
    hash: digest,
    personName: z.string(),
  })),
});
export type AuditDocument = z.infer<typeof auditDocument>;

/** ledger/checkpoints.json: how far the ledgers had come, as the laboratory signed it, oldest first. */
export const checkpointsDocument = z.object({
  schema: z.literal('culet-checkpoints-1'),
  checkpoints: z.array(z.object({ statement: checkpointStatement, publicKey: digest, signature: z.string().regex(/^[0-9a-f]{128}$/) })),
});
export type CheckpointsDocument = z.infer<typeof checkpointsDocument>;

/** How a ledger is represented: the digests of every entry from `from` to the head, in files of lines “number digest”; none where no entry of it is in the bundle. */
const chain = z.object({ from: z.number().int().nonnegative(), head, entries: z.number().int().nonnegative(), files: z.array(z.string()) });

/** index.json: what is in the bundle and where. */
export const indexDocument = z.object({
  schema: z.literal('culet-bundle-index-1'),
  exportedAt: instant,
  demonstration: z.boolean(),
  laboratory: z.object({ name: z.string(), address: z.string(), zone: z.string() }),
  /** Null for the bundle of one case. */
  period: period.nullable(),
  cases: z.array(z.object({
    number: z.string(), id: z.string(), receivedAt: instant, /** In the laboratory's zone. */ receivedOn: day, client: z.string(), state: z.string(),
    folder: z.string(), items: z.number(), stones: z.number(), reports: z.array(z.string()), rawRecords: z.number(),
  })),
  keys: z.array(z.object({ id: z.string(), publicKey: digest, fingerprint: digest, madeAt: instant, path: z.string() })),
  ledgers: z.object({ custody: chain, audit: chain, checkpoints: z.number().int().nonnegative() }),
});
export type IndexDocument = z.infer<typeof indexDocument>;

/** manifest.json: every other file but the seal. */
export const manifestDocument = z.object({
  schema: z.literal('culet-bundle-manifest-1'),
  exportedAt: instant,
  /** Whether the laboratory's key signed the seal; where not, `unsignedBecause` says why. */
  signed: z.boolean(),
  unsignedBecause: z.string(),
  files: z.array(z.object({ path: z.string(), bytes: z.number().int().nonnegative(), sha256: digest })),
});
export type ManifestDocument = z.infer<typeof manifestDocument>;

/** What the laboratory signs when it writes a bundle. */
export const bundleStatement = z.strictObject({
  statement: z.literal('culet-bundle-1'),
  laboratory: z.string(),
  demonstration: z.boolean(),
  exportedAt: instant,
  period: period.nullable(),
  cases: z.number().int().positive(),
  /** The file manifest.json. */
  manifest: z.strictObject({ bytes: z.number().int().positive(), sha256: digest }),
  /** Every byte of the archive before the seal. */
  body: z.strictObject({ bytes: z.number().int().positive(), sha256: digest }),
});
export type BundleStatement = z.infer<typeof bundleStatement>;
