import { describe, expect, test } from 'vitest';
import { createElectronStore, type ElectronStoreOptions, type SafeStorage } from '../../../../main/keys/electron-store.ts';

const CONTENT = Uint8Array.from({ length: 48 }, (_one, i) => 255 - i);

/** Electron's side as it behaves: closed bytes begin with their version, and what does not open is thrown. */
function safe(change: Partial<SafeStorage> & { version?: string } = {}): SafeStorage {
  const { version = 'v11', ...rest } = change;
  return {
    isEncryptionAvailable: () => true,
    encryptString: (text) => Buffer.from(`${version}${[...text].reverse().join('')}`, 'latin1'),
    decryptString: (bytes) => {
      const text = bytes.toString('latin1');
      if (!text.startsWith(version)) throw new Error('Error while decrypting the ciphertext provided to safeStorage.decryptString.');
      return [...text.slice(version.length)].reverse().join('');
    },
    ...rest,
  };
}

const store = (platform: NodeJS.Platform, change: Parameters<typeof safe>[0] = {}, localState: ElectronStoreOptions['localState'] = () => null) =>
  createElectronStore({ platform, safeStorage: safe(change), localState });

describe('which key store it is', () => {
  test.each([
    ['gnome_libsecret', 'libsecret'], ['kwallet', 'kwallet'], ['kwallet5', 'kwallet'], ['kwallet6', 'kwallet'],
  ])('Linux says %s', (chosen, backend) => {
    expect(store('linux', { getSelectedStorageBackend: () => chosen }).state()).toEqual({ available: true, backend });
  });

  test.each(['basic_text', 'unknown', '', 'something newer'])('Linux says “%s”: there is none', (chosen) => {
    const made = store('linux', { getSelectedStorageBackend: () => chosen });
    expect(made.state()).toEqual({ available: false, why: 'this system offers no key store' });
    expect(made.seal(CONTENT)).toMatchObject({ ok: false, error: { code: 'unavailable' } });
    expect(made.open(CONTENT)).toMatchObject({ ok: false, error: { code: 'unavailable' } });
  });

  test('an older Electron on Linux does not say which', () => {
    expect(store('linux').state()).toEqual({ available: true, backend: 'keyring' });
    expect(store('linux', { isEncryptionAvailable: () => false }).state()).toMatchObject({ available: false });
  });

  test('Linux is asked which one only after it was asked whether', () => {
    const asked: string[] = [];
    store('linux', { isEncryptionAvailable: () => { asked.push('whether'); return true; }, getSelectedStorageBackend: () => { asked.push('which'); return 'kwallet'; } }).state();
    expect(asked).toEqual(['whether', 'which']);
  });

  test('macOS, and a Keychain that was denied', () => {
    expect(store('darwin').state()).toEqual({ available: true, backend: 'keychain' });
    expect(store('darwin', { isEncryptionAvailable: () => false }).state()).toEqual({ available: false, why: expect.stringContaining('denied') as string });
  });

  test('Windows, once its own key is on the disk', () => {
    const kept = JSON.stringify({ os_crypt: { encrypted_key: 'RFBBUEk=' } });
    expect(store('win32', {}, () => kept).state()).toEqual({ available: true, backend: 'dpapi' });
    for (const text of [null, '', '{', '{}', '[]', 'null', JSON.stringify({ os_crypt: {} }), JSON.stringify({ os_crypt: { encrypted_key: '' } })]) {
      expect(store('win32', {}, () => text).state(), String(text)).toEqual({ available: false, why: 'the key store is being set up' });
    }
  });

  test('one that throws is none', () => {
    expect(store('darwin', { isEncryptionAvailable: () => { throw new Error('not ready'); } }).state()).toMatchObject({ available: false });
  });
});

describe('closing and opening', () => {
  test('gives back the bytes that were closed, whatever they are', () => {
    const made = store('linux', { getSelectedStorageBackend: () => 'gnome_libsecret' });
    const sealed = made.seal(CONTENT);
    if (!sealed.ok) throw new Error(sealed.error.message);
    expect(made.open(sealed.value)).toEqual({ ok: true, value: CONTENT });
  });

  test('what another account closed is refused in a sentence, not thrown', () => {
    expect(store('darwin').open(new TextEncoder().encode('v99 of another'))).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringContaining('does not open') as string } });
  });

  test('a desktop’s store that is locked falls back to a word that everybody knows: nothing is closed with it', () => {
    const fallen = { version: 'v10', getSelectedStorageBackend: () => 'gnome_libsecret' };
    expect(store('linux', fallen).seal(CONTENT)).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringContaining('locked') as string } });
    // The same beginning stands for the real store on macOS.
    expect(store('darwin', { version: 'v10' }).seal(CONTENT)).toMatchObject({ ok: true });
  });

  test.each([
    ['throws', { encryptString: () => { throw new Error('denied'); } }],
    ['does not open what it closed', { decryptString: () => { throw new Error('denied'); } }],
    ['gives back something else', { decryptString: () => 'AAAA' }],
  ])('a store that %s closes nothing', (_what, change) => {
    expect(store('darwin', change).seal(CONTENT)).toMatchObject({ ok: false, error: { code: 'refused' } });
  });
});
