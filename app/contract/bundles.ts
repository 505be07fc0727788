import { z } from 'zod';
import { bundleVerdict } from '../bundle/bundle-verdict.ts';
import { taskName } from './batch.ts';
import { bytes, day, digest } from './common.ts';
import { reads } from './operation.ts';

export const bundlesContract = {
  /** Tells whether a zip is a bundle as a laboratory wrote it. Needs no casebook; where one is open, its keys are known too. Nothing of it is kept. */
  'bundles.check': reads('door', z.strictObject({ bytes }), bundleVerdict),
  /** Writes the bundle of the cases received on these days, both counted in, into the folder `bundles` beside the casebook; it may be too large for the window to carry. */
  'bundles.writePeriod': reads(['manager'], z.strictObject({ task: taskName, from: day, to: day }), z.object({
    file: z.string(), bytes: z.number(), sha256: digest, cases: z.number(), files: z.number(), /** Empty where it was signed. */ unsignedBecause: z.string(),
  })),
};
