import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { err, ok } from '../../../app/result.ts';
import type { Casebook } from '../../../db/open-casebook.ts';
import { RECOVERY, type NewCredential } from '../../../db/store/credentials.ts';
import { createKeyring, type Keyring } from '../../../main/keys/keyring.ts';
import { sealToOf } from '../../../main/keys/sealed-box.ts';
import type { SystemStore } from '../../../main/keys/system-store.ts';
import { openWrap } from '../../../main/keys/closing.ts';

export const SEED = new Uint8Array(32).fill(9);

/** What a person's password opens: here without a password, which would take half a second each. */
const partOf = (id: string): Uint8Array => new Uint8Array(Buffer.from(id.padEnd(32, '.').slice(0, 32), 'latin1'));

export const credentialOf = (id: string): NewCredential =>
  ({ id, kind: id === RECOVERY ? 'recovery' : 'password', salt: '00', costN: 2, costR: 1, costP: 1, proof: '00', sealTo: sealToOf(partOf(id)) });

/** A key store whose key lies in a file, so that it outlives the program that is killed. */
export function storeInFile(file: string): SystemStore {
  const key = (): Buffer => {
    if (!existsSync(file)) writeFileSync(file, randomBytes(32));
    return readFileSync(file);
  };
  return {
    state: () => ({ available: true, backend: 'libsecret' }),
    seal(content) {
      const nonce = randomBytes(12);
      const cipher = createCipheriv('aes-256-gcm', key(), nonce);
      return ok(new Uint8Array(Buffer.concat([nonce, cipher.update(content), cipher.final(), cipher.getAuthTag()])));
    },
    open(sealed) {
      try {
        const decipher = createDecipheriv('aes-256-gcm', key(), sealed.subarray(0, 12)).setAuthTag(sealed.subarray(sealed.byteLength - 16));
        return ok(new Uint8Array(Buffer.concat([decipher.update(sealed.subarray(12, sealed.byteLength - 16)), decipher.final()])));
      } catch {
        return err({ code: 'refused', message: 'not opened' });
      }
    },
  };
}

/** The keyring of a program in which somebody who may sign is there. */
export function openKeyring(casebook: Casebook, keyId: string, store: SystemStore): Keyring {
  const keyring = createKeyring(() => casebook, store);
  keyring.hold({}, keyId, SEED);
  return keyring;
}

/** Copies of the present key by whose they are: which store holds them, and whether they open. */
export async function copiesOf(casebook: Casebook, store: SystemStore): Promise<Record<string, { readonly store: string | null; readonly opens: boolean }>> {
  const key = (await casebook.keys.current())!;
  return Object.fromEntries((await casebook.keys.wraps(key.id)).map((wrap) => {
    const id = wrap.id.slice(key.id.length + 1);
    const seed = openWrap(wrap, partOf(id), store);
    return [id, { store: wrap.store, opens: seed !== null && Buffer.compare(seed, SEED) === 0 }];
  }));
}
