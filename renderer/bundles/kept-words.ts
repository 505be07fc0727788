import type { SealedBundleView } from '../../app/contract/bundles.ts';

/** How a kept bundle was judged when it was taken in. */
export const KEPT_WORDS: Readonly<Record<SealedBundleView['verdict'], string>> = {
  authentic: 'authentic', 'unknown-key': 'unaltered, key was not known', unsigned: 'whole, signed by nobody',
};
