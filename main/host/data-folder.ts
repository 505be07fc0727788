import path from 'node:path';

/** Name of the folder below the user's own configuration folder, and of the environment variable that names another. */
export const DATA_FOLDER_DEFAULTS = { name: 'Culet', variable: 'CULET_DATA' } as const;

type Machine = { readonly platform: NodeJS.Platform; readonly env: Readonly<Record<string, string | undefined>>; readonly home: string };

/** Where the casebook, the backups and the log lie: what the command line says, else the environment, else the platform's own place. Absolute. */
export function dataFolder(stated: string | undefined, machine: Machine, workingFolder: string): string {
  const chosen = stated ?? machine.env[DATA_FOLDER_DEFAULTS.variable];
  return chosen === undefined || chosen === '' ? platformFolder(machine) : path.resolve(workingFolder, chosen);
}

/** The same place on both hosts, so that a casebook started in one is found in the other. */
function platformFolder({ platform, env, home }: Machine): string {
  switch (platform) {
    case 'win32': return path.join(env['APPDATA'] ?? path.join(home, 'AppData', 'Roaming'), DATA_FOLDER_DEFAULTS.name);
    case 'darwin': return path.join(home, 'Library', 'Application Support', DATA_FOLDER_DEFAULTS.name);
    default: return path.join(env['XDG_CONFIG_HOME'] ?? path.join(home, '.config'), DATA_FOLDER_DEFAULTS.name);
  }
}
