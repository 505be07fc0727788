import type { Casebook } from '../../db/open-casebook.ts';
import { createWorkStores } from '../../db/store/work-stores.ts';
import { createKeyring } from '../keys/keyring.ts';
import type { Signer } from '../keys/signer.ts';
import type { Work } from '../services/work-context.ts';
import type { Call } from '../services/service.ts';
import { createInlinePool } from '../workers/inline-pool.ts';

/** What writing a bundle works with outside of the window: it makes no record. Without `signer` it signs only with a key that is no secret, as the demonstration's is. */
export function bundleWork(casebook: Casebook, at: string, call: Call, signer: Signer = createKeyring(() => casebook)): Work {
  const noRecords = (): never => { throw new Error('a bundle makes no records'); };
  return { casebook, stores: createWorkStores(casebook.handle, noRecords), pool: createInlinePool(), signer, call, at };
}
