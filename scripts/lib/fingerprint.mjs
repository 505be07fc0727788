import { createHash } from 'node:crypto';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/**
 * A digest over names, sizes and times of the files under `paths`: it changes when any of them is edited, added or removed.
 * @param {string} base the folder the paths are relative to
 * @param {readonly string[]} paths files or folders; those that do not exist count as nothing
 * @returns {string} hexadecimal SHA-256
 */
export function fingerprint(base, paths) {
  const hash = createHash('sha256');
  /** @param {string} path */
  const visit = (path) => {
    const full = join(base, path);
    if (!existsSync(full)) return;
    const stat = statSync(full);
    if (!stat.isDirectory()) {
      hash.update(`${path}\0${stat.size}\0${stat.mtimeMs}\n`);
      return;
    }
    for (const name of readdirSync(full).sort()) visit(`${path}/${name}`);
  };
  for (const path of paths) visit(path);
  return hash.digest('hex');
}
