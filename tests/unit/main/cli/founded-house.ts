import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { houseSettings } from '../../../../app/domain/house-settings.ts';
import { openCasebook, type Casebook } from '../../../../db/open-casebook.ts';
import { createNewId } from '../../../../main/new-id.ts';
import { createKeyring } from '../../../../main/keys/keyring.ts';
import { newCredential } from '../../../../main/people/derive-credential.ts';
import { foundLaboratory } from '../../../../main/people/found-laboratory.ts';
import { noSystemStore } from '../../../../main/keys/system-store.ts';
import { copiesDue } from '../../../../main/keys/share-key.ts';
import { INTAKE } from '../services/work-house.ts';

export const MANAGER = { name: 'Ada Invented', password: 'several invented words' };
export const EXAMINER = { name: 'Ben Invented', password: 'other invented words' };

const options = (file: string) => ({ file, mustExist: false, migrationsFolder: fileURLToPath(new URL('../../../../db/migrations', import.meta.url)), now: () => new Date(), newId: createNewId() });

/** Opens it beside the command line, to look into it. */
export function reopened(file: string): Casebook {
  const opened = openCasebook({ ...options(file), mustExist: true });
  if (!opened.ok) throw new Error(opened.error.message);
  return opened.value;
}

/** A closed casebook with passwords: a manager, an examiner, a key that only passwords open, and one case. */
export async function foundedHouse(laboratory = 'Invented Laboratory'): Promise<{ readonly file: string; readonly folder: string }> {
  const folder = mkdtempSync(path.join(tmpdir(), 'culet-founded-'));
  const file = path.join(folder, 'Casebook.culet');
  const opened = openCasebook(options(file));
  if (!opened.ok) throw new Error(opened.error.message);
  const casebook = opened.value;
  const at = new Date().toISOString();
  const manager = await casebook.laboratory.create(at, { name: laboratory, address: '', zone: 'UTC', logo: null, isDemonstration: false, settings: houseSettings.parse({}) }, { name: MANAGER.name, initials: 'AI', roles: ['manager'] });
  const founded = await foundLaboratory(casebook, at, manager, MANAGER.password, noSystemStore('the command line reaches none'));
  const change = { at, personId: manager, operation: 'people.save' };
  const examiner = await casebook.people.save(change, { id: null, name: EXAMINER.name, initials: 'BI', roles: ['examiner'], active: true });
  if (!examiner.ok) throw new Error(examiner.error.message);
  const keyring = createKeyring(() => casebook);
  keyring.hold({}, founded.keyId, founded.seed);
  const { credential } = await newCredential(examiner.value.id, 'password', EXAMINER.password);
  await casebook.credentials.set(change, { credentials: [credential], wraps: await copiesDue(casebook, keyring, { changed: [credential] }), subject: examiner.value.id, content: {} });
  const taken = await casebook.cases.takeIn({ at, personId: manager, operation: 'cases.takeIn' }, INTAKE);
  if (!taken.ok) throw new Error(JSON.stringify(taken.error));
  casebook.close();
  return { file, folder };
}
