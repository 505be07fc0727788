import path from 'node:path';

export type ProgramFolders = {
  /** The built page. */
  readonly page: string;
  readonly preload: string;
  readonly icon: string;
  readonly migrations: string;
  readonly worker: string;
};

/**
 * Where the parts of the built program lie, seen from the folder that all bundles of the main process share (dist/main).
 * From source there is no build beside the file: a caller that runs so names its folders itself.
 */
export function programFolders(bundleFolder: string = __dirname): ProgramFolders {
  return {
    page: path.join(bundleFolder, '..', 'renderer'),
    preload: path.join(bundleFolder, 'preload.cjs'),
    icon: path.join(bundleFolder, '..', 'assets', 'icon.png'),
    migrations: path.join(bundleFolder, 'migrations'),
    worker: path.join(bundleFolder, 'worker.cjs'),
  };
}
