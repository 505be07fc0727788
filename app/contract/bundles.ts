import { z } from 'zod';
import { indexDocument } from '../bundle/bundle-documents.ts';
import { bundleSummary, bundleVerdict } from '../bundle/bundle-verdict.ts';
import { caseDocument } from '../bundle/case-document.ts';
import { taskName } from './batch.ts';
import { bytes, day, digest, instant, line } from './common.ts';
import { changes, reads } from './operation.ts';

/** A bundle of another laboratory that this casebook keeps as it came. `id`: SHA-256 of the zip. */
export const sealedBundleView = z.object({
  id: digest, name: z.string(), verdict: z.enum(['authentic', 'unknown-key', 'unsigned']), fingerprint: z.string(), checkedHow: z.string(),
  summary: bundleSummary, size: z.number(), takenAt: instant, takenBy: z.string(),
});
export type SealedBundleView = z.infer<typeof sealedBundleView>;

const inBundle = { id: digest };

export const bundlesContract = {
  /** Tells whether a zip is a bundle as a laboratory wrote it. Needs no casebook; where one is open, its keys are known too. Nothing of it is kept. */
  'bundles.check': reads('door', z.strictObject({ bytes }), bundleVerdict),
  /** Writes the bundle of the cases received on these days, both counted in, into the folder `bundles` beside the casebook; it may be too large for the window to carry. */
  'bundles.writePeriod': reads(['manager'], z.strictObject({ task: taskName, from: day, to: day }), z.object({
    file: z.string(), bytes: z.number(), sha256: digest, cases: z.number(), files: z.number(), /** Empty where it was signed. */ unsignedBecause: z.string(),
  })),
  /** Checks a bundle of another laboratory and keeps it as it came. Where its key is not known, or nobody signed it, `checkedHow` says how it was made sure whose it is. */
  'bundles.takeIn': changes(['manager'], z.strictObject({ name: line(255), bytes, checkedHow: z.string().trim().max(400, 'At most 400 characters.') }), sealedBundleView),
  'bundles.list': reads('anyone', z.strictObject({}), z.array(sealedBundleView)),
  /** What a kept bundle says it holds. */
  'bundles.open': reads('anyone', z.strictObject(inBundle), z.object({ bundle: sealedBundleView, index: indexDocument })),
  /** One case of it; `folder` as the index names it. */
  'bundles.case': reads('anyone', z.strictObject({ ...inBundle, folder: line(240) }), caseDocument),
  /** One file of it, byte for byte. */
  'bundles.file': reads('anyone', z.strictObject({ ...inBundle, path: line(240) }), z.object({ name: z.string(), bytes: z.instanceof(Uint8Array) })),
};
