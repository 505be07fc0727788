import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';

const hasMigrations = (folder: string): boolean => existsSync(join(folder, 'meta', '_journal.json'));

/**
 * The folder of the numbered migrations, found from the folder of a module of the program, never from the working folder:
 * beside the bundle (`migrations`), or `db/migrations` of the source tree above it. Throws where neither is there: then the program is not whole.
 */
export function migrationsFolder(from: string): string {
  const beside = join(from, 'migrations');
  if (hasMigrations(beside)) return beside;
  for (let folder = from; ; folder = dirname(folder)) {
    const inSource = join(folder, 'db', 'migrations');
    if (hasMigrations(inSource)) return inSource;
    if (dirname(folder) === folder) throw new Error(`no migrations beside or above ${from}: the program is not whole`);
  }
}
