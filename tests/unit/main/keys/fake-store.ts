import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import type { StoreBackend } from '../../../../app/domain/key-closing.ts';
import { err, ok } from '../../../../app/result.ts';
import type { SystemStore } from '../../../../main/keys/system-store.ts';

export type FakeStore = SystemStore & {
  /** Whether it is there at all. */
  available: boolean;
  /** Whether it closes anything; one that does not still opens. */
  takes: boolean;
  /** As when the account's key store was emptied: what it closed before does not open any more. */
  loseKey(): void;
};

/** A key store of one account of one machine. Every new one is another machine's. */
export function fakeStore(backend: StoreBackend = 'libsecret'): FakeStore {
  let key = randomBytes(32);
  const gone = err({ code: 'unavailable' as const, message: 'this system offers no key store' });
  return {
    available: true, takes: true,
    loseKey() { key = randomBytes(32); },
    state() { return this.available ? { available: true, backend } : { available: false, why: 'this system offers no key store' }; },
    seal(content) {
      if (!this.available) return gone;
      if (!this.takes) return err({ code: 'refused', message: 'not taken' });
      const nonce = randomBytes(12);
      const cipher = createCipheriv('aes-256-gcm', key, nonce);
      return ok(new Uint8Array(Buffer.concat([nonce, cipher.update(content), cipher.final(), cipher.getAuthTag()])));
    },
    open(sealed) {
      if (!this.available) return gone;
      try {
        const decipher = createDecipheriv('aes-256-gcm', key, sealed.subarray(0, 12)).setAuthTag(sealed.subarray(sealed.byteLength - 16));
        return ok(new Uint8Array(Buffer.concat([decipher.update(sealed.subarray(12, sealed.byteLength - 16)), decipher.final()])));
      } catch {
        return err({ code: 'refused', message: 'not opened' });
      }
    },
  };
}
