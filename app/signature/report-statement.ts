import { z } from 'zod';
import { digest, instant } from '../contract/common.ts';

/** A stretch of a file, bytes from its beginning. */
const stretch = z.strictObject({ at: z.number().int().nonnegative(), bytes: z.number().int().positive() });
export type Stretch = z.infer<typeof stretch>;

/** A report's file as it was signed. */
export const signedFile = z.strictObject({
  /** Of the whole file. */
  bytes: z.number().int().positive(),
  /** SHA-256 of every byte but those of the signature file. */
  sha256: digest,
  /** Where the signature file stands: the only bytes that `sha256` leaves out. */
  signature: stretch,
  /** Where the attached files stand, the signature file among them, and SHA-256 of every byte outside: tells altered pages from altered attachments. */
  attachments: stretch,
  pages: digest,
});
export type SignedFile = z.infer<typeof signedFile>;

/** What the laboratory signs when it issues a report; described in docs/verify-a-report.md. */
export const reportStatement = z.strictObject({
  statement: z.literal('culet-report-1'),
  laboratory: z.string(),
  demonstration: z.boolean(),
  number: z.string(), revision: z.number().int().positive(),
  issuedAt: instant,
  /** The attached report.json: what the report says. */
  content: z.strictObject({ bytes: z.number().int().positive(), sha256: digest }),
  file: signedFile,
});
export type ReportStatement = z.infer<typeof reportStatement>;
