import { z } from 'zod';
import { digest, instant } from '../contract/common.ts';
import { signingKeyOfReport } from '../signature/report-verdict.ts';
import { period } from './bundle-documents.ts';

/**
 * What may be wrong with an archive. The first row is its frame: whoever meets one of these must not unpack it. The second row is what stands in it.
 */
export const BUNDLE_FAULTS = [
  'unsafe-name', 'duplicate-name', 'link', 'encrypted', 'unsupported', 'too-many', 'too-large', 'cut-off', 'headers-differ', 'foreign-bytes', 'bad-content',
  'seal', 'manifest', 'altered-file', 'missing-file', 'added-file', 'document', 'ledger', 'checkpoint', 'report', 'frame',
] as const;
export type BundleFaultCode = (typeof BUNDLE_FAULTS)[number];

/** Something that does not fit. `path`: the file in the archive, empty where it is none of them. */
export const bundleFault = z.object({ code: z.enum(BUNDLE_FAULTS), path: z.string(), sentence: z.string() });
export type BundleFault = z.infer<typeof bundleFault>;

export const bundleSummary = z.object({
  laboratory: z.string(), demonstration: z.boolean(), exportedAt: instant, period: period.nullable(),
  cases: z.array(z.string()), files: z.number(), reports: z.number(), rawRecords: z.number(),
  /** Entries whose digests were recomputed, and digests that their chain was walked over. */
  ledgers: z.object({ custody: z.number(), audit: z.number(), walked: z.number(), checkpoints: z.number() }),
});
export type BundleSummary = z.infer<typeof bundleSummary>;

export const BUNDLE_VERDICTS = ['authentic', 'altered', 'unknown-key', 'unsigned', 'not-a-bundle'] as const;

/** What checking an archive gives. */
export const bundleVerdict = z.object({
  verdict: z.enum(BUNDLE_VERDICTS),
  sentence: z.string(), next: z.string(),
  sha256: digest, bytes: z.number(),
  /** Null where the archive is not whole enough to say. */
  bundle: bundleSummary.nullable(),
  key: signingKeyOfReport.nullable(),
  faults: z.array(bundleFault),
});
export type BundleVerdict = z.infer<typeof bundleVerdict>;
