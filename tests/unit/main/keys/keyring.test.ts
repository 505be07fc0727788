import { describe, expect, test } from 'vitest';
import { keyIdOf } from '../../../../app/signature/fingerprint.ts';
import { verifySignature } from '../../../../app/signature/verify-signature.ts';
import { bytesToHex } from '@noble/hashes/utils.js';
import { publicKeyOf } from '../../../../main/keys/ed25519.ts';
import { createKeyring } from '../../../../main/keys/keyring.ts';
import { makeOpenKey } from '../../../../main/keys/make-open-key.ts';
import { newKey } from '../../../../main/keys/new-key.ts';
import { madeCasebook } from '../../db/made-casebook.ts';

const MESSAGE = new TextEncoder().encode('what is signed');
const seed = new Uint8Array(32).fill(9);

async function withKey() {
  const made = await madeCasebook();
  const change = { at: made.deps.now().toISOString(), personId: made.personId, operation: 'keys.create' };
  return { ...made, change, keyring: createKeyring(() => made.casebook) };
}

describe('keyring', () => {
  test('says that there is no key yet', async () => {
    const { keyring } = await withKey();
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringContaining('no key') as string } });
  });

  test('signs while somebody holds the key, and is locked when the last one lets go', async () => {
    const { keyring, casebook, change } = await withKey();
    const { key, seed: secret } = newKey('');
    await casebook.keys.create(change, key, []);
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: false, error: { code: 'locked', next: 'Sign in again with your password to sign.' } });
    const [one, other] = [{}, {}];
    keyring.hold(one, key.id, secret);
    keyring.hold(other, key.id, secret);
    keyring.release(one);
    const signed = await keyring.sign(MESSAGE);
    expect(signed).toMatchObject({ ok: true, value: { keyId: key.id } });
    if (signed.ok) expect(verifySignature(signed.value.publicKey, MESSAGE, signed.value.signature)).toBe(true);
    keyring.release(other);
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: false, error: { code: 'locked' } });
  });

  test('a key that was made anew is not signed with the old private part', async () => {
    const { keyring, casebook, change } = await withKey();
    const first = newKey('');
    await casebook.keys.create(change, first.key, []);
    keyring.hold({}, first.key.id, first.seed);
    await casebook.keys.create(change, newKey('the old machine was stolen').key, []);
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: false, error: { code: 'locked' } });
    expect((await casebook.keys.list()).map((key) => key.current)).toEqual([true, false]);
  });

  test('the demonstration’s key signs for anyone', async () => {
    const { keyring, casebook, change } = await withKey();
    const id = await makeOpenKey(casebook, change, seed);
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: true, value: { keyId: id, publicKey: publicKeyOf(seed) } });
  });

  test('a public key that was swapped in the file is not signed with', async () => {
    const { keyring, casebook, change } = await withKey();
    const stranger = publicKeyOf(new Uint8Array(32).fill(8));
    await casebook.keys.create(change, { id: keyIdOf(publicKeyOf(seed)), publicKey: bytesToHex(stranger), reason: '' }, []);
    keyring.hold({}, keyIdOf(publicKeyOf(seed)), seed);
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringContaining('somebody changed it') as string } });
  });

  test('another casebook does not find the key of the one before', async () => {
    const first = await withKey();
    const second = await withKey();
    let open = first.casebook;
    const keyring = createKeyring(() => open);
    const { key, seed: secret } = newKey('');
    await first.casebook.keys.create(first.change, key, []);
    keyring.hold({}, key.id, secret);
    open = second.casebook;
    await second.casebook.keys.create(second.change, key, []);
    expect(await keyring.sign(MESSAGE)).toMatchObject({ ok: false, error: { code: 'locked' } });
  });
});
