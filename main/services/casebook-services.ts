import type { Failure } from '../../app/contract/failure.ts';
import type { Output } from '../../app/contract/index.ts';
import { checkPicture } from '../../app/custody/check-picture.ts';
import { checkPassword } from '../../app/people/check-password.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { foundLaboratory, type Founded } from '../people/found-laboratory.ts';
import { isZone } from '../../app/custody/calendar.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { changing, type IntakeDeps } from './intake-context.ts';
import type { Call, Services } from './service.ts';

type Names = 'casebook.status' | 'casebook.create' | 'casebook.openDemonstration' | 'casebook.closeDemonstration' | 'casebook.restore' | 'casebook.backup';

type LaboratoryFields = { readonly zone: string; readonly logo: { readonly mediaType: 'image/png' | 'image/jpeg'; readonly bytes: Uint8Array } | null };

/** Largest logo: it is printed on every report. */
const MAX_LOGO_BYTES = 4 * 1024 * 1024;

/** Rules of the laboratory's own fields that the form alone can't see; null where all fits. */
export function checkLaboratory(input: LaboratoryFields): { readonly ok: false; readonly error: Failure } | null {
  const fields: Record<string, string> = {};
  if (!isZone(input.zone)) fields['zone'] = 'This time zone is not known; choose one from the list, for instance Europe/Berlin.';
  const logoFault = input.logo === null ? null : checkPicture(input.logo.bytes, input.logo.mediaType);
  if (logoFault !== null) fields['logo'] = logoFault;
  else if (input.logo !== null && input.logo.bytes.byteLength > MAX_LOGO_BYTES) fields['logo'] = 'The logo is larger than 4 MB; a smaller picture prints as well.';
  if (Object.keys(fields).length === 0) return null;
  return err({ code: 'invalid-input', message: 'Some entries need another look.', next: 'See the sentences beside the fields.', fields });
}

/** Everybody, with what they sign in with. */
async function peopleAtDoor(casebook: Casebook): Promise<Output<'casebook.status'>['people']> {
  const kinds = new Map((await casebook.credentials.list()).map((one) => [one.id, one.kind]));
  return (await casebook.people.list()).map((person) => {
    const kind = kinds.get(person.id);
    return { ...person, opensWith: kind === 'code' || kind === 'password' ? kind : 'nothing' as const };
  });
}

async function status({ manager, guard, host }: IntakeDeps, call: Call): Promise<Output<'casebook.status'>> {
  const casebook = manager.current();
  const trouble = manager.trouble();
  const laboratory = casebook === null ? null : await casebook.laboratory.get();
  const { person, locked = false } = await guard.standing(call.session);
  const people = casebook === null ? [] : await peopleAtDoor(casebook);
  const me = person === null ? null : people.find((one) => one.id === call.session.personId) ?? null;
  // Whoever has not signed in sees names only where the house lets them be seen.
  const hidden = laboratory?.settings.showNames === false && !laboratory.isDemonstration && (me === null || locked);
  const hostNote = [host.hostNote, manager.warning() ?? ''].filter((part) => part !== '').join(' ');
  return {
    version: host.version, host: host.host, hostNote, file: manager.file(),
    state: casebook !== null ? 'open' : trouble !== null ? 'unusable' : 'none',
    trouble: trouble === null ? null : { message: trouble.message, next: trouble.next, backups: trouble.book === 'own' ? manager.backups() : [] },
    laboratory,
    people: hidden ? people.filter((one) => one.id === me?.id) : people, me, locked,
    guardsRestored: casebook === null ? [] : [...casebook.guardsRestored],
  };
}

async function mayRestore({ manager, guard }: IntakeDeps, call: Call): Promise<Result<null, Failure>> {
  if (manager.current() === null) return ok(null);
  const { person, locked } = await guard.standing(call.session);
  return person?.roles.includes('manager') === true && locked !== true ? ok(null)
    : err({ code: 'not-allowed', message: 'Only a manager may put a backup in the place of a casebook that works.', next: 'Let a manager take over at this window.' });
}

/** The operations on the casebook as a whole. */
export function createCasebookServices(deps: IntakeDeps): Pick<Services, Names> {
  const { manager, guard, keyring } = deps;
  return {
    'casebook.status': async (_input, call) => ok(await status(deps, call)),
    'casebook.create': async ({ name, address, zone, logo, person }, call) => {
      const wrong = checkLaboratory({ zone, logo });
      if (wrong) return wrong;
      const unfit = checkPassword(person.password, [person.name, name]);
      if (unfit !== null) return err({ code: 'invalid-input', message: unfit, next: 'Choose another password.', fields: { 'person.password': unfit } });
      let founded: Founded | null = null;
      const { password, ...first } = person;
      const made = await manager.create({ name, address, zone, logo }, first, async (fresh, personId) => {
        founded = await foundLaboratory(fresh, deps.now().toISOString(), personId, password, keyring.store);
      });
      if (!made.ok) return made;
      guard.enter(call.session, made.value.personId);
      const { keyId, seed, recovery } = founded as unknown as Founded;
      keyring.hold(call.session, keyId, seed);
      return ok({ done: true, recovery });
    },
    'casebook.openDemonstration': async (_input, call) => {
      const opened = await manager.openDemonstration((done, total, note) => call.emit({ kind: 'progress', task: 'casebook.openDemonstration', done, total, note }));
      if (opened.ok) guard.leave(call.session);
      return opened;
    },
    'casebook.closeDemonstration': async (_input, call) => {
      const left = await manager.closeDemonstration();
      if (left.ok) guard.leave(call.session);
      return left;
    },
    'casebook.restore': async ({ file }, call) => {
      const allowed = await mayRestore(deps, call);
      if (!allowed.ok) return allowed;
      const restored = await manager.restore(file, call.session.personId);
      if (restored.ok) guard.leave(call.session);
      return restored;
    },
    'casebook.backup': changing(deps, 'casebook.backup', async (_casebook, change) => manager.backup(change)),
  };
}
