import { storeNamed } from '../../app/domain/key-closing.ts';
import { capitalised } from '../../app/evidence/sentences.ts';
import { err, ok } from '../../app/result.ts';
import { RECOVERY } from '../../db/store/credentials.ts';
import { openWrap } from '../keys/closing.ts';
import { howClosed } from '../keys/how-closed.ts';
import { copiesDue } from '../keys/share-key.ts';
import { wrapId } from '../keys/wraps-due.ts';
import { givenCode } from '../people/given-code.ts';
import { prove } from '../people/prove.ts';
import { conflict, refused } from './failures.ts';
import { changing, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

type Names = 'keys.useStore' | 'keys.openWithSheet';

const noSecret = () => refused('The key of the demonstration is invented and no secret.', 'Nothing needs to be done.');

/** The operating system's key store beside the passwords: whether it is used, and the way past it. */
export function createKeyStoreServices(deps: IntakeDeps): Pick<Services, Names> {
  const { keyring, guard } = deps;
  return {
    'keys.useStore': changing(deps, 'keys.useStore', async (casebook, change, { used, reason }) => {
      if ((await casebook.laboratory.get())?.isDemonstration === true) return noSecret();
      const key = await casebook.keys.current();
      if (key === null) return refused('This laboratory has no key yet.', 'Let a manager sign in: the key is made then.');
      const closing = await howClosed(casebook, keyring.store);
      if (closing.wanted === used && closing.closedBy === (used ? 'store' : 'password')) return conflict(used ? 'The key store is used already.' : 'The key store is not used.', 'Nothing needs to be done.');
      if (await keyring.seedOf(key.id) === null) {
        const why = await keyring.closedElsewhere();
        return why === null ? err({ code: 'locked', message: 'The laboratory’s key is locked.', next: 'Sign in again with your password, then decide.' }) : err(why);
      }
      if (!used) {
        await casebook.keys.chooseStore(change, { used, reason }, await copiesDue(casebook, keyring, { closing: 'password' }));
        return ok({ done: true as const });
      }
      if (closing.offered === null) return refused(`There is no key store to use here: ${closing.why}.`, 'The passwords alone close the key; choose long ones.');
      if (!closing.sheet) return refused('There is no recovery sheet that opens the key.', 'Make a new recovery sheet under People first: without it a lost key store would take the key with it.');
      const wraps = await copiesDue(casebook, keyring, { closing: 'store' });
      if (wraps.some((wrap) => wrap.keyId === key.id && wrap.sealed !== '' && wrap.store === null && wrap.id !== wrapId(key.id, RECOVERY)) || (wraps.length === 0 && closing.closedBy !== 'store')) {
        return refused(`${capitalised(storeNamed(closing.offered))} did not take the key.`, 'Unlock it, allow Culet to use it, and try again. Nothing was changed.');
      }
      await casebook.keys.chooseStore(change, { used, reason }, wraps);
      return ok({ done: true as const });
    }),

    'keys.openWithSheet': changing(deps, 'keys.openWithSheet', (casebook, change, { recovery }, call) => guard.attempt(async () => {
      if ((await casebook.laboratory.get())?.isDemonstration === true) return noSecret();
      const [key, sheet] = [await casebook.keys.current(), await casebook.credentials.get(RECOVERY)];
      if (key === null || sheet === null) return refused('This casebook has no recovery sheet.', 'Sign on the computer and account where the key was closed, or make a new key.');
      if (await keyring.seedOf(key.id) !== null) return conflict('The key is open already.', 'Nothing needs to be done; the recovery sheet stays good.');
      const proved = await prove(casebook, change, sheet, recovery);
      if (!proved.ok) return proved;
      const copy = (await casebook.keys.wraps(key.id)).find((wrap) => wrap.id === wrapId(key.id, RECOVERY));
      const seed = copy === undefined ? null : openWrap(copy, proved.value, keyring.store);
      if (seed === null) return refused('This is the recovery sheet, but its copy of the key does not open.', 'Verify the ledgers: they name what was changed. A backup or a new key helps.');
      keyring.hold(call.session, key.id, seed);
      const given = await givenCode(RECOVERY, 'recovery');
      const wraps = await copiesDue(casebook, keyring, { changed: [given.credential], closing: 'here' });
      const content = { statement: 'opened the key with the recovery sheet, which was replaced', opensAgain: wraps.filter((wrap) => wrap.sealed !== '').map((wrap) => wrap.id) };
      await casebook.credentials.set(change, { credentials: [given.credential], wraps, subject: key.id, content });
      return ok({ recovery: given.code });
    })),
  };
}
