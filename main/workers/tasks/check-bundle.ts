import type { BundleCheck } from '../../../app/bundle/judge-bundle.ts';
import { bytesSource } from '../../bundle/byte-source.ts';
import { checkBundle } from '../../bundle/check-bundle.ts';
import type { Task } from '../task.ts';

/** Judges the bytes of a bundle. */
export const checkBundleTask: Task<Uint8Array, BundleCheck> = { run: (file) => checkBundle(bytesSource(file)) };
