import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { IntakeInput } from '../../../app/contract/cases.ts';
import { houseSettings } from '../../../app/domain/house-settings.ts';
import { openCasebook, type Casebook } from '../../../db/open-casebook.ts';

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

export const temporaryFolder = (): string => mkdtempSync(join(tmpdir(), 'culet-test-'));

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

type Item = IntakeInput['parcels'][number]['items'][number];

export const looseItem = (change: Partial<Item> = {}): Item => ({
  kind: 'loose', declared: 'round brilliant, said to be natural', declaredValue: '', grossWeight: 10_234, weightUnit: 'ct', count: null, setting: null, condition: '',
  stones: [{ position: '', shape: 'round', measurements: '', colourClass: 'colourless', weight: 10_234 }], photographs: [], ...change,
});

export const ringItem = (change: Partial<Item> = {}): Item => ({
  kind: 'jewellery', declared: 'ring with three stones', declaredValue: '2000', grossWeight: 512_345, weightUnit: 'g', count: null, setting: 'open-back', condition: 'worn shank',
  stones: ['centre', 'left', 'right'].map((position) => ({ position, shape: 'round', measurements: '', colourClass: 'colourless' as const, weight: null })), photographs: [], ...change,
});

export const lotItem = (change: Partial<Item> = {}): Item => ({
  kind: 'lot', declared: 'melee', declaredValue: '', grossWeight: 34_000, weightUnit: 'ct', count: 340, setting: null, condition: '', stones: [], photographs: [], ...change,
});

export function intake(items: Item[] = [looseItem()], change: Partial<IntakeInput> = {}): IntakeInput {
  return {
    client: { name: 'Invented Client', address: '', email: '', phone: '', note: '' }, asks: 'natural or laboratory-grown?', dueOn: null, remarks: '', place: 'safe 2', broughtBy: '',
    parcels: [{ sealNumber: '', remarks: '', items }], ...change,
  };
}
