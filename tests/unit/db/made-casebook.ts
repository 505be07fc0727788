import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll } from 'vitest';
import { houseSettings } from '../../../app/domain/house-settings.ts';
import { openCasebook, type Casebook } from '../../../db/open-casebook.ts';

export * from './intake-samples.ts';

export const MIGRATIONS = resolve(import.meta.dirname, '../../../db/migrations');

/** A clock that moves one second at each look, from a fixed instant, and ids that count. */
export function steadyDeps(start = '2026-03-02T09:00:00.000Z') {
  let ticks = 0;
  let ids = 0;
  return {
    now: () => new Date(Date.parse(start) + 1000 * ticks++),
    newId: () => `id-${String(++ids).padStart(6, '0')}`,
  };
}

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A folder that goes when the tests of the file that asked for it are done. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'culet-casebook-'));
  folders.push(folder);
  return folder;
}

export type MadeCasebook = { casebook: Casebook; file: string; personId: string; deps: ReturnType<typeof steadyDeps>; options: Parameters<typeof openCasebook>[0] };

/** A new casebook of an invented laboratory in a folder of its own, opened for writing. */
export async function madeCasebook(deps = steadyDeps()): Promise<MadeCasebook> {
  const file = join(temporaryFolder(), 'Casebook.culet');
  const options = { file, mustExist: false, migrationsFolder: MIGRATIONS, ...deps };
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  const casebook = opened.value;
  const personId = await casebook.laboratory.create(deps.now().toISOString(), {
    name: 'Invented Laboratory', address: 'Nowhere 1', zone: 'Europe/Berlin', logo: null, isDemonstration: false, settings: houseSettings.parse({}),
  }, { name: 'Ada Invented', initials: 'AI', roles: ['manager', 'examiner', 'intake'] });
  return { casebook, file, personId, deps, options: { ...options, mustExist: true } };
}
