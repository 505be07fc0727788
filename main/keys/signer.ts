import type { Failure } from '../../app/contract/failure.ts';
import type { Result } from '../../app/result.ts';

/** A signature of the laboratory. `publicKey`: raw, 32 bytes; `signature`: Ed25519, 64 bytes. */
export type LaboratorySignature = { readonly keyId: string; readonly signature: Uint8Array; readonly publicKey: Uint8Array };

export type Signer = {
  /**
   * Signs with the laboratory's present key. Fails with code `locked` and a sentence while nobody who may sign has signed in with a password,
   * and with `refused` where there is no key yet, or where the stored public key is not the one that belongs to it.
   */
  sign(message: Uint8Array): Promise<Result<LaboratorySignature, Failure>>;
};
