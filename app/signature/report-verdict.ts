import { z } from 'zod';
import { digest, instant } from '../contract/common.ts';

/** What may have been altered in a signed report. `file`: bytes that belong to none of its parts, cut off, or added. */
export const ALTERED_PARTS = ['pages', 'report.json', 'attached record', 'signature', 'file'] as const;
export const alteration = z.object({ part: z.enum(ALTERED_PARTS), name: z.string(), sentence: z.string() });
export type Alteration = z.infer<typeof alteration>;

/** What a report's own signature says of it. */
export const signedAs = z.object({ laboratory: z.string(), demonstration: z.boolean(), number: z.string(), revision: z.number(), issuedAt: instant, content: digest });
export type SignedAs = z.infer<typeof signedAs>;

/** The key a report was signed with. */
export const signingKeyOfReport = z.object({
  id: z.string(), fingerprint: digest,
  /** Whose it is, as this casebook or the given file knows it; null where neither does. */
  whose: z.string().nullable(),
  /** Why a key that is known does not count, in a sentence; empty where it does. */
  distrust: z.string(),
});

/** How a report of this casebook stands today. */
export const standing = z.object({ state: z.enum(['in-force', 'superseded', 'withdrawn', 'not-ours']), sentence: z.string() });
export type Standing = z.infer<typeof standing>;

export const VERDICTS = ['authentic', 'altered', 'unknown-key', 'unsigned', 'draft', 'not-a-report'] as const;

/** What checking a file gives. */
export const reportVerdict = z.object({
  verdict: z.enum(VERDICTS),
  /** One sentence that says it all. */
  sentence: z.string(),
  /** What to do now. */
  next: z.string(),
  sha256: digest, bytes: z.number(),
  /** Null where the signature itself does not hold: then nothing it says can be relied on. */
  report: signedAs.nullable(),
  key: signingKeyOfReport.nullable(),
  altered: z.array(alteration),
  standing: standing.nullable(),
});
export type ReportVerdict = z.infer<typeof reportVerdict>;
