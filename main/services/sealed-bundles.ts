import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js';
import { indexDocument } from '../../app/bundle/bundle-documents.ts';
import { INDEX_NAME, SEAL_NAME } from '../../app/bundle/bundle-paths.ts';
import { caseDocument } from '../../app/bundle/case-document.ts';
import { readSeal } from '../../app/bundle/seal.ts';
import type { SealedBundleView } from '../../app/contract/bundles.ts';
import { ok } from '../../app/result.ts';
import { fingerprintOf, keyIdOf } from '../../app/signature/fingerprint.ts';
import type { KnownKey } from '../../app/signature/judge-report.ts';
import { fileSource } from '../bundle/byte-source.ts';
import { createDescribeKept } from '../bundle/describe-kept.ts';
import { createKeptBundles } from '../bundle/kept-bundle.ts';
import { keepBundle, mayBeTakenIn } from '../bundle/take-in.ts';
import { checkUpload } from '../uploads/check-upload.ts';
import type { Uploads } from '../uploads/uploads.ts';
import { notFound, refused } from './failures.ts';
import { knownFor } from './known-for-reports.ts';
import type { Services } from './service.ts';
import { changing, reading, type WorkDeps } from './work-context.ts';

type Names = 'bundles.takeIn' | 'bundles.list' | 'bundles.open' | 'bundles.keepKey' | 'bundles.case' | 'bundles.file';

const parsed = (bytes: Uint8Array): unknown => JSON.parse(new TextDecoder().decode(bytes));

/** Whose key signed it, as far as is known now; a key that is no longer trusted says so. */
function keyOf({ fingerprint }: SealedBundleView, keys: readonly KnownKey[]): { whose: string | null; distrust: string } | null {
  if (fingerprint === '') return null;
  const known = keys.find(({ publicKey }) => fingerprintOf(hexToBytes(publicKey)) === fingerprint);
  return { whose: known?.whose ?? null, distrust: known?.distrust ?? '' };
}

/** Bundles of other laboratories that are kept as they came: looked into, never mixed with the house's own cases. */
export function createSealedBundlesServices(deps: WorkDeps & { readonly uploads: Uploads }): Pick<Services, Names> {
  const kept = createKeptBundles();
  const describeKept = createDescribeKept(kept);
  return {
    'bundles.takeIn': changing(deps, 'bundles.takeIn', async ({ upload, checkedHow }, { casebook, pool, call, change }) => {
      const whole = deps.uploads.whole(call.session, upload);
      if (!whole.ok) return whole;
      const { id, name, size, file, signal } = whole.value;
      const checked = await checkUpload(whole.value, pool, call);
      if (!checked.ok) return checked;
      const { keys } = await knownFor(casebook);
      const fit = mayBeTakenIn({ name, ...checked.value, size, checkedHow }, keys);
      if (!fit.ok) return fit;
      const source = fileSource(file);
      const taken = await keepBundle(casebook, change, fit.value, source, { signal, progress: (done, total) => { call.emit({ kind: 'progress', task: id, done, total, note: name }); } }).finally(() => { source.close(); });
      if (!taken.ok) return taken;
      await deps.uploads.drop(call.session, id);
      await describeKept(casebook);
      return taken;
    }),

    'bundles.list': reading(deps, 'bundles.list', async (_input, { casebook }) => {
      const all = await casebook.sealedCases.contradictions();
      return ok((await casebook.sealedBundles.list()).map((one) => ({ ...one, contradicts: all.filter(({ id, other }) => id === one.id || other === one.id).length })));
    }),

    'bundles.open': reading(deps, 'bundles.open', async ({ id }, { casebook }) => {
      const bundle = await casebook.sealedBundles.get(id);
      if (bundle === null) return notFound('This bundle');
      const file = await kept.file(casebook, id, INDEX_NAME);
      if (!file.ok) return file;
      const all = (await casebook.sealedCases.contradictions()).filter((one) => one.id === id || one.other === id);
      return ok({
        bundle, index: indexDocument.parse(parsed(file.value)), signedBy: keyOf(bundle, (await knownFor(casebook)).keys),
        contradictions: all.map((one) => ({ other: one.id === id ? one.other : one.id, sentence: one.sentence })),
      });
    }),

    'bundles.keepKey': changing(deps, 'bundles.keepKey', async ({ id, checkedHow }, { casebook, change }) => {
      const bundle = await casebook.sealedBundles.get(id);
      if (bundle === null) return notFound('This bundle');
      if (bundle.summary.demonstration) return refused('This bundle is part of a demonstration: its key is no secret, and anyone can sign with it.', 'Nothing needs to be done.');
      const file = await kept.file(casebook, id, SEAL_NAME);
      if (!file.ok) return file;
      const publicKey = readSeal(file.value)?.signed?.publicKey;
      if (publicKey === undefined) return refused('Nobody signed this bundle: there is no key to keep.', 'Ask the laboratory for a bundle that is signed.');
      return casebook.keys.keepKnown(change, { id: keyIdOf(publicKey), publicKey: bytesToHex(publicKey), laboratory: bundle.summary.laboratory, checkedHow });
    }),

    'bundles.case': reading(deps, 'bundles.case', async ({ id, folder }, { casebook }) => {
      const file = await kept.file(casebook, id, `${folder}/case.json`);
      return file.ok ? ok(caseDocument.parse(parsed(file.value))) : file;
    }),

    'bundles.file': reading(deps, 'bundles.file', async ({ id, path }, { casebook }) => {
      const file = await kept.file(casebook, id, path);
      return file.ok ? ok({ name: path.split('/').at(-1) ?? 'file', bytes: Uint8Array.from(file.value) }) : file;
    }),
  };
}
