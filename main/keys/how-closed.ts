import { storeBackend, storeNamed, type KeyClosing } from '../../app/domain/key-closing.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { RECOVERY } from '../../db/store/credentials.ts';
import type { Wrap } from '../../db/store/key-wraps.ts';
import { takeFromStore } from './closing.ts';
import type { SystemStore } from './system-store.ts';
import { wrapId } from './wraps-due.ts';

type Held = { readonly wraps: readonly Wrap[]; readonly stored: readonly Wrap[]; readonly opensHere: boolean };

/** Copies of those who may sign, and those of them that a key store holds. */
function heldBy(all: readonly Wrap[], store: SystemStore): Held {
  const wraps = all.filter((wrap) => wrap.sealed !== '' && wrap.sealedTo !== '' && wrap.id !== wrapId(wrap.keyId, RECOVERY));
  const stored = wraps.filter((wrap) => wrap.store !== null);
  return { wraps, stored, opensHere: stored.every((wrap) => takeFromStore(wrap, store) !== null) };
}

const backendOf = (wrap: Wrap | undefined): KeyClosing['store'] => storeBackend.safeParse(wrap?.store).data ?? null;

/** How the private part of the key that signs is kept, as this window finds it. */
export async function howClosed(casebook: Casebook, store: SystemStore): Promise<KeyClosing> {
  const key = await casebook.keys.current();
  const all = key === null ? [] : await casebook.keys.wraps(key.id);
  const { wraps, stored, opensHere } = heldBy(all, store);
  const sheet = await casebook.credentials.get(RECOVERY);
  const state = store.state();
  return {
    offered: state.available ? state.backend : null, why: state.available ? '' : state.why,
    wanted: await casebook.keys.storeIsWanted(),
    closedBy: wraps.length === 0 ? 'none' : stored.length === 0 ? 'password' : stored.length === wraps.length ? 'store' : 'both',
    store: backendOf(stored[0]), opensHere,
    sheet: sheet !== null && all.some((wrap) => wrap.id === wrapId(wrap.keyId, RECOVERY) && wrap.sealed !== '' && wrap.sealedTo === sheet.sealTo),
  };
}

const BY_SHEET = 'a manager opens the key here with the recovery sheet under House → The laboratory’s key';

/** Why a password did not open the key, where that is because of a key store; else null. */
export function closedElsewhere(all: readonly Wrap[], store: SystemStore): Failure | null {
  const { stored, opensHere } = heldBy(all, store);
  if (stored.length === 0 || opensHere) return null;
  const state = store.state();
  const kept = storeNamed(backendOf(stored[0]));
  return state.available
    ? { code: 'locked', message: `The laboratory’s key is kept by ${kept} of another computer or account, or this one has lost it.`, next: `Sign where it was closed; or ${BY_SHEET}.` }
    : { code: 'locked', message: `The laboratory’s key is kept by ${kept}, which can’t be used here: ${state.why}.`, next: `Sign in Culet’s own window on the computer and account where it was closed; or ${BY_SHEET}.` };
}
