import { describe, expect, test } from 'vitest';
import { RECOVERY } from '../../../../db/store/credentials.ts';
import type { Wrap } from '../../../../db/store/key-wraps.ts';
import { openWrap, othersDue, takeFromStore, type Closing } from '../../../../main/keys/closing.ts';
import { closedElsewhere } from '../../../../main/keys/how-closed.ts';
import { makeOpenWrap } from '../../../../main/keys/open-wrap.ts';
import { sealToOf } from '../../../../main/keys/sealed-box.ts';
import { noSystemStore } from '../../../../main/keys/system-store.ts';
import { wrapId, wrapsDue } from '../../../../main/keys/wraps-due.ts';
import { fakeStore, type FakeStore } from './fake-store.ts';

const KEY = '0123456789abcdef';
const SEED = new Uint8Array(32).fill(9);
const PARTS = { ada: new Uint8Array(32).fill(1), ben: new Uint8Array(32).fill(2), [RECOVERY]: new Uint8Array(32).fill(3) };
const CREDENTIALS = Object.entries(PARTS).map(([id, part]) => ({ id, sealTo: sealToOf(part) }));
const person = (id: string, active = true) => ({ id, name: id, initials: id, roles: ['appraiser' as const], active });
const PEOPLE = [person('ada'), person('ben')];

const inStore = (store: FakeStore): Closing => ({ how: 'store', backend: 'libsecret', store });
const due = (present: readonly Wrap[], closing: Closing, people = PEOPLE) => wrapsDue(KEY, SEED, people, CREDENTIALS, present, closing);
const merged = (present: readonly Wrap[], fresh: readonly Wrap[]): Wrap[] => [...new Map([...present, ...fresh].map((wrap) => [wrap.id, wrap])).values()];
const kept = (wraps: readonly Wrap[]) => Object.fromEntries(wraps.map((wrap) => [wrap.id.split('/')[1], wrap.store]));
const part = (wraps: readonly Wrap[], id: keyof typeof PARTS) => ({ wrap: wraps.find((one) => one.id === wrapId(KEY, id))!, own: PARTS[id]! });

describe('closed copies with a key store', () => {
  const store = fakeStore();
  const wraps = due([], inStore(store));

  test('those of persons need the password and the store, that of the recovery sheet its code alone', () => {
    expect(kept(wraps)).toEqual({ ada: 'libsecret', ben: 'libsecret', [RECOVERY]: null });
    for (const id of ['ada', 'ben'] as const) {
      const { wrap, own } = part(wraps, id);
      expect(openWrap(wrap, own, store)).toEqual(SEED);
      expect(openWrap(wrap, PARTS[RECOVERY]!, store)).toBeNull();
      expect(openWrap(wrap, own, fakeStore())).toBeNull();
      expect(openWrap(wrap, own, noSystemStore('none'))).toBeNull();
      // Somebody who takes the store's mark away has no box to try passwords on.
      expect(openWrap({ ...wrap, store: null }, own, store)).toBeNull();
    }
    const sheet = part(wraps, RECOVERY);
    expect(openWrap(sheet.wrap, sheet.own, noSystemStore('none'))).toEqual(SEED);
  });

  test('nothing is due where all are closed as they should be', () => {
    expect(due(wraps, inStore(store))).toEqual([]);
  });

  test('those that the passwords alone close are due, and that of the sheet is not', () => {
    const bare = due([], { how: 'password', store });
    expect(kept(bare)).toEqual({ ada: null, ben: null, [RECOVERY]: null });
    expect(kept(due(bare, inStore(store)))).toEqual({ ada: 'libsecret', ben: 'libsecret' });
    expect(kept(due(wraps, { how: 'password', store }))).toEqual({ ada: null, ben: null });
  });

  test('where no store can be reached, those that one holds stay, and new ones are closed by the password', () => {
    const leave: Closing = { how: 'leave', store: noSystemStore('none') };
    expect(due(wraps, leave)).toEqual([]);
    expect(kept(due(wraps.filter((wrap) => !wrap.id.endsWith('ben')), leave))).toEqual({ ben: null });
  });

  test('after the store lost its key, and on another machine, all that it held are due', () => {
    const other = fakeStore();
    const fresh = due(wraps, inStore(other));
    expect(kept(fresh)).toEqual({ ada: 'libsecret', ben: 'libsecret' });
    expect(openWrap(part(fresh, 'ada').wrap, PARTS['ada'], other)).toEqual(SEED);
  });

  test('a store that takes nothing leaves what was there; what it no longer opens is closed by the password', () => {
    const broken = fakeStore();
    const bare = due([], { how: 'password', store: broken });
    broken.takes = false;
    expect(due(bare, inStore(broken))).toEqual([]);
    expect(kept(due([], inStore(broken)))).toEqual({ ada: null, ben: null, [RECOVERY]: null });
    expect(kept(due(wraps, inStore(broken)))).toEqual({ ada: null, ben: null });
  });

  test('who may no longer sign has nothing left', () => {
    const [taken] = due(wraps, inStore(store), [person('ada'), person('ben', false)]);
    expect(taken).toMatchObject({ id: wrapId(KEY, 'ben'), sealed: '', store: null });
    expect(due(merged(wraps, [taken!]), inStore(store), [person('ada'), person('ben', false)])).toEqual([]);
  });

  test('keys that no longer sign are closed as well, and opened again, without their private part', () => {
    const bare = due([], { how: 'password', store });
    const closed = othersDue(bare, inStore(store));
    expect(kept(closed)).toEqual({ ada: 'libsecret', ben: 'libsecret' });
    expect(openWrap(part(closed, 'ben').wrap, PARTS['ben'], store)).toEqual(SEED);
    expect(othersDue(merged(bare, closed), inStore(store))).toEqual([]);
    const again = othersDue(closed, { how: 'password', store });
    expect(again).toEqual(bare.filter((wrap) => !wrap.id.endsWith(RECOVERY)));
    // Those of another machine can't be opened here: they stay.
    expect(othersDue(closed, { how: 'password', store: fakeStore() })).toEqual([]);
    expect(othersDue(closed, inStore(fakeStore()))).toEqual([]);
    expect(othersDue([makeOpenWrap(KEY, SEED)], inStore(store))).toEqual([]);
  });

  test('a box that the store gives back altered does not open', () => {
    const { wrap, own } = part(wraps, 'ada');
    const lying = { ...store, open: (bytes: Uint8Array) => { const box = store.open(bytes); return box.ok ? { ok: true as const, value: box.value.map((byte, i) => (i === 0 ? byte ^ 1 : byte)) } : box; } };
    expect(takeFromStore(wrap, lying)).not.toBeNull();
    expect(openWrap(wrap, own, lying)).toBeNull();
  });
});

describe('why a password does not open the key', () => {
  const store = fakeStore('keychain');
  const wraps = due([], { how: 'store', backend: 'keychain', store });

  test('no reason where the store opens it, or none holds it', () => {
    expect(closedElsewhere(wraps, store)).toBeNull();
    expect(closedElsewhere(due([], { how: 'password', store }), noSystemStore('none'))).toBeNull();
  });

  test('another computer or account, or a store that lost it', () => {
    expect(closedElsewhere(wraps, fakeStore())).toEqual({
      code: 'locked', message: 'The laboratory’s key is kept by the system’s key store (Keychain) of another computer or account, or this one has lost it.',
      next: 'Sign where it was closed; or a manager opens the key here with the recovery sheet under House → The laboratory’s key.',
    });
  });

  test('a store that can’t be reached', () => {
    expect(closedElsewhere(wraps, noSystemStore('a window in a browser can’t reach the system’s key store'))).toMatchObject({
      code: 'locked', message: expect.stringContaining('which can’t be used here: a window in a browser can’t reach the system’s key store.') as string, next: expect.stringContaining('recovery sheet') as string,
    });
  });
});
