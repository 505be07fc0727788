import type { StoreBackend } from '../../app/domain/key-closing.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { StoreFault, StoreState, SystemStore } from './system-store.ts';

/** What is used of Electron's `safeStorage`. Only after the program is ready; older ones do not say which store of a Linux desktop they chose. */
export type SafeStorage = {
  isEncryptionAvailable(): boolean;
  encryptString(plainText: string): Buffer;
  decryptString(encrypted: Buffer): string;
  getSelectedStorageBackend?(): string;
};

export type ElectronStoreOptions = {
  readonly safeStorage: SafeStorage;
  readonly platform: NodeJS.Platform;
  /**
   * The file in which Windows' own key of the store is kept, closed by DPAPI (“Local State”), or null where it can't be read. It is written some
   * seconds after it was made: what is sealed before that would be lost with the program.
   */
  localState(): string | null;
};

const NONE = 'this system offers no key store';

/** Stores of Linux desktops as Electron names them. `basic_text` is a fixed word in the program that anybody knows. */
const LINUX: Readonly<Record<string, StoreBackend>> = { gnome_libsecret: 'libsecret', kwallet: 'kwallet', kwallet5: 'kwallet', kwallet6: 'kwallet' };

/** How bytes begin that were closed with that fixed word, for want of a store. On macOS and Windows it stands for the real one. */
const FIXED_WORD = 'v10';

function keyIsOnDisk(text: string | null): boolean {
  try {
    const kept = (JSON.parse(text ?? '{}') as { os_crypt?: { encrypted_key?: unknown } }).os_crypt?.encrypted_key;
    return typeof kept === 'string' && kept !== '';
  } catch {
    return false;
  }
}

const refused = (message: string): { readonly ok: false; readonly error: StoreFault } => err({ code: 'refused', message });

/** The operating system's key store by way of Electron: Keychain, DPAPI, or what a Linux desktop has. */
export function createElectronStore({ safeStorage, platform, localState }: ElectronStoreOptions): SystemStore {
  /** Asked for first: Electron chooses the store of a Linux desktop only then. */
  function isThere(): boolean {
    try {
      return safeStorage.isEncryptionAvailable();
    } catch {
      return false;
    }
  }

  function state(): StoreState {
    if (!isThere()) return { available: false, why: platform === 'darwin' ? 'the Keychain can’t be reached, or was denied to Culet' : NONE };
    if (platform === 'darwin') return { available: true, backend: 'keychain' };
    if (platform === 'win32') return keyIsOnDisk(localState()) ? { available: true, backend: 'dpapi' } : { available: false, why: 'the key store is being set up' };
    const chosen = safeStorage.getSelectedStorageBackend?.();
    if (chosen === undefined) return { available: true, backend: 'keyring' };
    const backend = LINUX[chosen];
    return backend === undefined ? { available: false, why: NONE } : { available: true, backend };
  }

  function open(sealed: Uint8Array): Result<Uint8Array, StoreFault> {
    const now = state();
    if (!now.available) return err({ code: 'unavailable', message: now.why });
    try {
      return ok(new Uint8Array(Buffer.from(safeStorage.decryptString(Buffer.from(sealed)), 'base64')));
    } catch {
      return refused('The key store does not open this: another account or computer closed it, or it lost its key.');
    }
  }

  return {
    state, open,
    seal(content) {
      const now = state();
      if (!now.available) return err({ code: 'unavailable', message: now.why });
      let sealed: Buffer;
      try {
        sealed = safeStorage.encryptString(Buffer.from(content).toString('base64'));
      } catch {
        return refused('The key store did not take it.');
      }
      // A desktop's store that is locked lets Electron fall back without a word.
      if (platform !== 'darwin' && platform !== 'win32' && sealed.subarray(0, FIXED_WORD.length).toString('latin1') === FIXED_WORD) return refused('The desktop’s key store is locked.');
      const again = open(sealed);
      return again.ok && Buffer.compare(again.value, content) === 0 ? ok(new Uint8Array(sealed)) : refused('The key store did not give back what it took.');
    },
  };
}
