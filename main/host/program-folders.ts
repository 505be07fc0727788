import path from 'node:path';
import { migrationsFolder } from '../casebook/migrations-folder.ts';

export type ProgramFolders = {
  /** The built page. */
  readonly page: string;
  readonly preload: string;
  readonly icon: string;
  readonly migrations: string;
  readonly worker: string;
  /** Threads that verify a casebook. */
  readonly verifyWorker: string;
};

/** The folder that all bundles of the main process share (dist/main). From source, where only the command line and tests run: this file's own. */
const HERE = typeof __dirname === 'string' ? __dirname : process.cwd();

/** Where the parts of the built program lie. */
export function programFolders(bundleFolder: string = HERE): ProgramFolders {
  return {
    page: path.join(bundleFolder, '..', 'renderer'),
    preload: path.join(bundleFolder, 'preload.cjs'),
    icon: path.join(bundleFolder, '..', 'assets', 'icon.png'),
    migrations: migrationsFolder(bundleFolder),
    worker: path.join(bundleFolder, 'worker.cjs'),
    verifyWorker: path.join(bundleFolder, 'verify-worker.cjs'),
  };
}
