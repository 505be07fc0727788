import { bytesToHex } from '@noble/hashes/utils.js';
import { fingerprintOf, keyIdOf } from '../signature/fingerprint.ts';
import type { KnownKey } from '../signature/judge-report.ts';
import type { BundleFault, BundleSummary, BundleVerdict } from './bundle-verdict.ts';

/** What the bytes of an archive say by themselves, before anyone asks whose key it is. */
export type BundleCheck = {
  readonly isBundle: boolean;
  readonly faults: readonly BundleFault[];
  readonly summary: BundleSummary | null;
  /** Of the seal, where it holds; null where the bundle is unsigned. */
  readonly publicKey: Uint8Array | null;
};

type Judged = Omit<BundleVerdict, 'sha256' | 'bytes'>;

const whatIsIt = ({ laboratory, cases, period }: BundleSummary): string => {
  const held = cases.length === 1 ? `case ${cases[0]!}` : `${cases.length} cases`;
  return `${held} of ${laboratory}${period === null ? '' : `, received ${period.from} to ${period.to}`}`;
};

const HOW_TO_GET_A_KEY = 'Ask the laboratory for the file of its public key, compare the fingerprint by another way, for instance by telephone, and keep the key under House.';

/** What a check means to whoever knows these keys. */
export function judgeBundle({ isBundle, faults, summary, publicKey }: BundleCheck, keys: readonly KnownKey[]): Judged {
  const known = publicKey === null ? undefined : keys.find((key) => key.publicKey === bytesToHex(publicKey));
  const key = publicKey === null ? null : { id: keyIdOf(publicKey), fingerprint: fingerprintOf(publicKey), whose: known?.whose ?? null, distrust: known?.distrust ?? '' };
  const said = { bundle: summary, key, faults: [...faults] };
  if (!isBundle) {
    return { ...said, verdict: 'not-a-bundle', sentence: 'This is not a bundle of Culet, or one that another program packed anew.', next: 'Check the zip file as the laboratory handed it out.' };
  }
  if (faults.length > 0 || summary === null) {
    return { ...said, verdict: 'altered', sentence: 'This bundle is not as it was written: it was altered or damaged.', next: 'Do not rely on it, and do not unpack it. Ask the laboratory for the file as it was written, byte for byte.' };
  }
  const invented = summary.demonstration ? ' It is part of the demonstration: laboratory, stones and key are invented, and it proves nothing.' : '';
  const every = `Every byte is as it was written, and the ledgers fit: ${whatIsIt(summary)}.`;
  if (publicKey === null) {
    return { ...said, verdict: 'unsigned', sentence: `${every} But nobody signed it: anyone could have written it.${invented}`, next: 'Ask the laboratory for a bundle that is signed: it is when a manager who has signed in with a password writes it.' };
  }
  if (known === undefined || known.distrust !== '') {
    return { ...said, verdict: 'unknown-key', sentence: known === undefined ? `${every} But nobody here knows whose key signed it.${invented}` : `${every} It was signed by a key that was kept as that of ${known.whose}. ${known.distrust}`, next: HOW_TO_GET_A_KEY };
  }
  return { ...said, verdict: 'authentic', sentence: `${every} It was signed by ${known.whose}.${invented}`, next: 'The signature says who wrote it and that it is unaltered; it does not say that the opinions are right.' };
}
