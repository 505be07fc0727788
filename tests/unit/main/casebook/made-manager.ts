import { houseSettings } from '../../../../app/domain/house-settings.ts';
import { createCasebookManager, type CasebookManager, type ManagerOptions } from '../../../../main/casebook/casebook-manager.ts';
import { silentLog } from '../../../../main/host/log.ts';
import { MIGRATIONS, steadyDeps, temporaryFolder } from '../../db/made-casebook.ts';

export type Clock = ReturnType<typeof steadyDeps> & { forward(ms: number): void };

/** A clock that can be put forward. */
export function movableClock(): Clock {
  const deps = steadyDeps();
  let shift = 0;
  return { ...deps, now: () => new Date(deps.now().getTime() + shift), forward(ms) { shift += ms; } };
}

/** A manager over a folder of its own, with a demonstration of a laboratory and nothing else. */
export function madeManager(change: Partial<ManagerOptions> = {}): { manager: CasebookManager; options: ManagerOptions } {
  const deps = movableClock();
  const options: ManagerOptions = {
    dataFolder: temporaryFolder(), migrationsFolder: MIGRATIONS, now: deps.now, newId: deps.newId, log: silentLog,
    buildDemonstration: async (casebook) => {
      await casebook.laboratory.create('2026-03-02T09:00:00.000Z', { name: 'Demonstration', address: '', zone: 'UTC', logo: null, isDemonstration: true, settings: houseSettings.parse({}) }, { name: 'Eve Invented', initials: 'EI', roles: ['manager'] });
    },
    ...change,
  };
  return { manager: createCasebookManager(options), options };
}

export const LABORATORY = { name: 'Invented Laboratory', address: '', zone: 'Europe/Berlin', logo: null };
export const ADA = { name: 'Ada Invented', initials: 'AI', roles: ['examiner' as const] };
