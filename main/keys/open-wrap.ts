import type { Wrap } from '../../db/store/key-wraps.ts';
import { SEED_BYTES } from './ed25519.ts';

/** Last part of the id of a copy that is not closed at all: the demonstration's key is invented and no secret. */
const OPEN = 'open';

/** Such a copy. */
export const makeOpenWrap = (keyId: string, seed: Uint8Array): Wrap =>
  ({ id: `${keyId}/${OPEN}`, keyId, sealedTo: '', sender: '', sealed: Buffer.from(seed).toString('hex'), store: null });

/** The private part, where one of the copies is not closed. */
export function openWrapOf(wraps: readonly Wrap[]): Uint8Array | null {
  const open = wraps.find((wrap) => wrap.id === `${wrap.keyId}/${OPEN}`);
  const seed = open === undefined ? null : Buffer.from(open.sealed, 'hex');
  return seed?.byteLength === SEED_BYTES ? new Uint8Array(seed) : null;
}
