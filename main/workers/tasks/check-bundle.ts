import type { BundleCheck } from '../../../app/bundle/judge-bundle.ts';
import { fileSource } from '../../bundle/byte-source.ts';
import { checkBundle } from '../../bundle/check-bundle.ts';
import { digestOf } from '../../bundle/digest-of.ts';
import type { Task } from '../task.ts';

/** Judges a file as a bundle: what its bytes say, and its own digest. */
export const checkBundleTask: Task<string, { readonly check: BundleCheck; readonly sha256: string }> = {
  run(file, { progress }) {
    const source = fileSource(file);
    try {
      const check = checkBundle(source, { progress: (done, total, note) => { progress({ done, total, note }); } });
      return { check, sha256: digestOf(source) };
    } finally {
      source.close();
    }
  },
};
