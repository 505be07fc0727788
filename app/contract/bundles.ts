import { z } from 'zod';
import { indexDocument } from '../bundle/bundle-documents.ts';
import { bundleSummary, bundleVerdict } from '../bundle/bundle-verdict.ts';
import { caseDocument } from '../bundle/case-document.ts';
import { taskName } from './batch.ts';
import { day, digest, id, instant, line } from './common.ts';
import { knownKeyView } from './keys.ts';
import { changes, reads } from './operation.ts';

/** A bundle of another laboratory that this casebook keeps as it came. `id`: SHA-256 of the zip. */
export const sealedBundleView = z.object({
  id: digest, name: z.string(), verdict: z.enum(['authentic', 'unknown-key', 'unsigned']), fingerprint: z.string(), checkedHow: z.string(),
  summary: bundleSummary, size: z.number(), takenAt: instant, takenBy: z.string(),
});
export type SealedBundleView = z.infer<typeof sealedBundleView>;

/** How two bundles that say they are of one laboratory contradict one another. `other`: the bundle beside this one. */
const contradiction = z.object({ other: digest, sentence: z.string() });

const inBundle = { id: digest };

/** Longest that may be said of how the origin of a bundle was made sure, characters. */
export const MAX_CHECKED_HOW = 400;
const checkedHow = z.string().trim().max(MAX_CHECKED_HOW, `At most ${MAX_CHECKED_HOW} characters.`);

export const bundlesContract = {
  /** Tells whether a zip that was carried here (app/contract/uploads.ts) is a bundle as a laboratory wrote it. Needs no casebook; where one is open, its keys are known too. Progress goes by the name of the upload. */
  'bundles.check': reads('door', z.strictObject({ upload: id }), bundleVerdict),
  /** Writes the bundle of the cases received on these days, both counted in, into the folder `bundles` beside the casebook; it may be too large for the window to carry. */
  'bundles.writePeriod': reads(['manager'], z.strictObject({ task: taskName, from: day, to: day }), z.object({
    file: z.string(), bytes: z.number(), sha256: digest, cases: z.number(), files: z.number(), /** Empty where it was signed. */ unsignedBecause: z.string(),
  })),
  /** Checks a bundle of another laboratory and keeps it as it came. Where its key is not known, or nobody signed it, `checkedHow` says how it was made sure whose it is. The upload is let go when it is kept. */
  'bundles.takeIn': changes(['manager'], z.strictObject({ upload: id, checkedHow }), sealedBundleView),
  /** Newest first; `contradicts`: how many sentences say that it and another one do not fit. */
  'bundles.list': reads('anyone', z.strictObject({}), z.array(sealedBundleView.extend({ contradicts: z.number() }))),
  /** What a kept bundle says it holds; whose key signed it as far as is known now; and what it and others of the same laboratory say differently. */
  'bundles.open': reads('anyone', z.strictObject(inBundle), z.object({
    bundle: sealedBundleView, index: indexDocument,
    /** Null where nobody signed it; `whose` null where the key is not known here. */
    signedBy: z.object({ whose: z.string().nullable(), distrust: z.string() }).nullable(),
    contradictions: z.array(contradiction),
  })),
  /** Keeps the key that signed a kept bundle as that of its laboratory, after its fingerprint was compared by another way. */
  'bundles.keepKey': changes(['manager'], z.strictObject({ ...inBundle, checkedHow: checkedHow.min(1, 'Write how you compared the fingerprint with the laboratory, for instance “read out by telephone”.') }), knownKeyView),
  /** One case of it; `folder` as the index names it. */
  'bundles.case': reads('anyone', z.strictObject({ ...inBundle, folder: line(240) }), caseDocument),
  /** One file of it, byte for byte. */
  'bundles.file': reads('anyone', z.strictObject({ ...inBundle, path: line(240) }), z.object({ name: z.string(), bytes: z.instanceof(Uint8Array) })),
};
