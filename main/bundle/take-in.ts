import { bytesToHex } from '@noble/hashes/utils.js';
import type { SealedBundleView } from '../../app/contract/bundles.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { plainName } from '../../app/bundle/plain-name.ts';
import { judgeBundle, type BundleCheck } from '../../app/bundle/judge-bundle.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { inGroups } from '../../app/signature/fingerprint.ts';
import type { KnownKey } from '../../app/signature/judge-report.ts';
import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { NewSealedBundle } from '../../db/store/sealed-bundles.ts';
import { aTurn } from '../../db/a-turn.ts';
import type { ByteSource } from './byte-source.ts';

/** Largest zip that a casebook keeps, bytes: the casebook and each of its backups grow by it. */
export const MAX_TAKEN_IN_BYTES = 1024 ** 3;

export const tooLargeToKeep = (size: number): Failure | null => (size <= MAX_TAKEN_IN_BYTES ? null : {
  code: 'refused', message: 'The bundle is larger than 1 GB and was not taken in: the casebook and each of its backups would grow by that.', next: 'Ask the laboratory for several bundles of shorter periods.',
});

export type Brought = {
  /** As the file was named; what has no place in a name is taken out of it. */
  readonly name: string;
  readonly check: BundleCheck;
  /** Of the zip that was checked. */
  readonly sha256: string;
  /** Length of the zip, bytes. */
  readonly size: number;
  /** How it was made sure whose it is; empty where nothing was said. */
  readonly checkedHow: string;
};

/** Why it is not taken in with what was said; null where it is. */
function whyAsked(verdict: 'authentic' | 'unknown-key' | 'unsigned', fingerprint: string, checkedHow: string): Failure | null {
  if (verdict === 'authentic' || checkedHow !== '') return null;
  const message = verdict === 'unsigned'
    ? 'Nobody signed this bundle. Write how you made sure whose it is.'
    : `Nobody here knows the key that signed this bundle: ${inGroups(fingerprint)}. Write how you compared this fingerprint with the laboratory.`;
  return { code: 'invalid-input', message, next: 'For instance “fingerprint read out by telephone”. It is kept with the bundle.', fields: { checkedHow: message } };
}

/** Whether a bundle may be kept, and as what: an altered one never is, nor one of the house itself. */
export function mayBeTakenIn({ name, check, sha256, size, checkedHow }: Brought, keys: readonly KnownKey[]): Result<NewSealedBundle, Failure> {
  const { verdict, sentence, next, faults, key, bundle } = judgeBundle(check, keys);
  if (verdict === 'altered' || verdict === 'not-a-bundle' || bundle === null) return err({ code: 'refused', message: `${sentence} ${faults[0]?.sentence ?? ''}`.trim(), next });
  const { publicKey } = check;
  if (publicKey !== null && keys.some((one) => one.own && one.publicKey === bytesToHex(publicKey))) {
    return err({ code: 'refused', message: 'This is a bundle of this laboratory itself: its cases are in this casebook.', next: 'Take in only what another laboratory wrote.' });
  }
  const large = tooLargeToKeep(size);
  if (large !== null) return err(large);
  const asked = whyAsked(verdict, key?.fingerprint ?? '', checkedHow);
  if (asked !== null) return err(asked);
  return ok({ id: sha256, name: plainName(name), verdict, fingerprint: key?.fingerprint ?? '', checkedHow, summary: bundle, size });
}

/** How somebody hears how far it has come, and stops it. */
export type TakingIn = { readonly signal: AbortSignal; progress?(kept: number, size: number): void };

/** After so many milliseconds of keeping pieces, others get their turn. */
const AT_A_STRETCH_MS = 12;

/** Keeps a bundle that was found fit: piece by piece, others get their turn in between. */
export async function keepBundle(casebook: Casebook, change: Change & { readonly personId: string }, bundle: NewSealedBundle, source: ByteSource, { signal, progress }: TakingIn): Promise<Result<SealedBundleView, Failure>> {
  let since = performance.now();
  return casebook.sealedBundles.keep(change, bundle, {
    read: (at, length) => source.read(at, length),
    async pace(kept) {
      if (performance.now() - since > AT_A_STRETCH_MS) {
        progress?.(kept, bundle.size);
        await aTurn();
        since = performance.now();
      }
      return !signal.aborted;
    },
  });
}
