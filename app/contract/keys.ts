import { z } from 'zod';
import { keyClosing } from '../domain/key-closing.ts';
import { MAX_PASSWORD } from '../people/check-password.ts';
import { bytes, done, filled, instant, nothing } from './common.ts';
import { changes, reads } from './operation.ts';

const keyId = z.string().regex(/^[0-9a-f]{16}$/);

/** Public part of one of the laboratory's own keys. `publicKey`: raw Ed25519, 64 hexadecimal digits. */
export const signingKeyView = z.object({
  id: keyId, publicKey: z.string(), fingerprint: z.string(), createdAt: instant, createdBy: z.string(), reason: z.string(), current: z.boolean(),
});
export type SigningKeyView = z.infer<typeof signingKeyView>;

/** A public key of another laboratory. */
export const knownKeyView = z.object({
  id: keyId, publicKey: z.string(), fingerprint: z.string(), laboratory: z.string(), checkedHow: z.string(), addedAt: instant, active: z.boolean(),
});
export type KnownKeyView = z.infer<typeof knownKeyView>;

export const keysContract = {
  /** The laboratory's own keys, the one that signs first; whether this window may sign with it now; how its private part is kept; keys of other laboratories. */
  'keys.list': reads('anyone', nothing, z.object({ own: z.array(signingKeyView), open: z.boolean(), closing: keyClosing, known: z.array(knownKeyView) })),
  /** The file that strangers get of one of the own keys. */
  'keys.export': reads('anyone', z.strictObject({ keyId }), z.object({ name: z.string(), bytes: z.instanceof(Uint8Array) })),
  /** Makes a new key that signs from now on; what the older ones signed stays good. */
  'keys.renew': changes(['manager'], z.strictObject({ reason: filled('Write why the key is made anew.', 400) }), signingKeyView),
  /** Whether the operating system's key store closes the private part beside the passwords. The key must be open. */
  'keys.useStore': changes(['manager'], z.strictObject({ used: z.boolean(), reason: filled('Write why this is decided.', 400) }), done),
  /** Opens the key with the recovery sheet where no password does: on another computer, or after the key store lost it. The sheet is used up, and a new one is given. */
  'keys.openWithSheet': changes(['manager'], z.strictObject({ recovery: z.string().max(2 * MAX_PASSWORD, `At most ${MAX_PASSWORD} characters.`) }), z.object({ recovery: z.string() })),
  /** Keeps the public key of another laboratory from the file it handed out. */
  'keys.keepKnown': changes(['manager', 'appraiser'], z.strictObject({
    file: bytes, laboratory: filled('Write whose key this is.', 160),
    checkedHow: filled('Write how you made sure that the key is theirs, for instance “fingerprint read out by telephone”.', 400),
  }), knownKeyView),
  'keys.dropKnown': changes(['manager'], z.strictObject({ keyId }), done),
};

