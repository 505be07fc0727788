import { bytesToHex } from '@noble/hashes/utils.js';
import { err, ok } from '../../app/result.ts';
import { keyIdOf, publicKeyFromHex } from '../../app/signature/fingerprint.ts';
import { readPublicKeyFile, writePublicKeyFile } from '../../app/signature/public-key-file.ts';
import { closingNow } from '../keys/closing.ts';
import { howClosed } from '../keys/how-closed.ts';
import { newKey } from '../keys/new-key.ts';
import { wrapsDue } from '../keys/wraps-due.ts';
import { notFound } from './failures.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

type Names = 'keys.list' | 'keys.export' | 'keys.renew' | 'keys.keepKnown' | 'keys.dropKnown';

/** The laboratory's own keys and those of others that it knows. */
export function createKeysServices(deps: IntakeDeps): Pick<Services, Names> {
  const { keyring } = deps;
  return {
    'keys.list': reading(deps, async (casebook) => {
      const current = await casebook.keys.current();
      const open = current !== null && await keyring.seedOf(current.id) !== null;
      return ok({ own: await casebook.keys.list(), open, closing: await howClosed(casebook, keyring.store), known: await casebook.keys.known() });
    }),

    'keys.export': reading(deps, async (casebook, { keyId }) => {
      const key = (await casebook.keys.list()).find((one) => one.id === keyId);
      const publicKey = key === undefined ? null : publicKeyFromHex(key.publicKey);
      const laboratory = await casebook.laboratory.get();
      if (key === undefined || publicKey === null || laboratory === null) return notFound('That key');
      const text = writePublicKeyFile({ laboratory: laboratory.name, publicKey, madeAt: key.createdAt, invented: laboratory.isDemonstration });
      return ok({ name: `laboratory-key-${key.id}.pem`, bytes: new TextEncoder().encode(text) });
    }),

    'keys.renew': changing(deps, 'keys.renew', async (casebook, change, { reason }, call) => {
      const { key, seed } = newKey(reason);
      const credentials = await casebook.credentials.list();
      const wraps = wrapsDue(key.id, seed, await casebook.people.list(), credentials, [], await closingNow(casebook, keyring.store, credentials));
      const made = await casebook.keys.create(change, key, wraps);
      keyring.hold(call.session, key.id, seed);
      return ok(made);
    }),

    'keys.keepKnown': changing(deps, 'keys.keepKnown', async (casebook, change, { file, laboratory, checkedHow }) => {
      const read = readPublicKeyFile(new TextDecoder().decode(file));
      if (!read.ok) return err({ code: 'unreadable', message: read.error, next: 'Ask the laboratory for the file of its public key.', fields: { file: read.error } });
      const { publicKey } = read.value;
      return casebook.keys.keepKnown(change, { id: keyIdOf(publicKey), publicKey: bytesToHex(publicKey), laboratory, checkedHow });
    }),

    'keys.dropKnown': changing(deps, 'keys.dropKnown', (casebook, change, { keyId }) => casebook.keys.dropKnown(change, keyId)),
  };
}
