import { createHash } from 'node:crypto';
import { indexDocument } from '../../app/bundle/bundle-documents.ts';
import { INDEX_NAME } from '../../app/bundle/bundle-paths.ts';
import { caseDocument } from '../../app/bundle/case-document.ts';
import { judgeBundle } from '../../app/bundle/judge-bundle.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { inGroups } from '../../app/signature/fingerprint.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { bytesSource } from '../bundle/byte-source.ts';
import { MAX_MEMBER_BYTES, readArchive } from '../bundle/read-archive.ts';
import { wholeMember } from '../bundle/read-member.ts';
import { taskFailure } from '../workers/task-failure.ts';
import { notFound } from './failures.ts';
import { knownFor } from './known-for-reports.ts';
import type { Services } from './service.ts';
import { changing, reading, type WorkDeps } from './work-context.ts';

type Names = 'bundles.takeIn' | 'bundles.list' | 'bundles.open' | 'bundles.case' | 'bundles.file';

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const bent = (sentence: string): { readonly ok: false; readonly error: Failure } =>
  err({ code: 'unreadable', message: `The kept bundle is no longer as it was taken in: ${sentence}`, next: 'Do not rely on it. Verify the casebook, and restore a backup in which it is sound.' });

/** A file of a kept bundle. The zip must still give the digest that it is kept under: what was checked then is what is shown now. */
async function fileOf(casebook: Casebook, id: string, path: string): Promise<Result<Uint8Array, Failure>> {
  const zip = await casebook.sealedBundles.zip(id);
  if (zip === null) return notFound('This bundle');
  if (sha256(zip) !== id) return bent('it does not give the SHA-256 it is kept under.');
  const source = bytesSource(zip);
  const archive = readArchive(source);
  if (!archive.ok) return bent(archive.error.sentence);
  const member = archive.value.members.find(({ name }) => name === path);
  if (member === undefined) return notFound('This file of the bundle');
  const read = wholeMember(source, member, MAX_MEMBER_BYTES);
  return read.ok ? read : bent(read.error.sentence);
}

const parsed = (bytes: Uint8Array): unknown => JSON.parse(new TextDecoder().decode(bytes));

/** Why it is not taken in with what was said; null where it is. */
function whyAsked(verdict: 'authentic' | 'unknown-key' | 'unsigned', fingerprint: string, checkedHow: string): Failure | null {
  if (verdict === 'authentic' || checkedHow !== '') return null;
  const message = verdict === 'unsigned'
    ? 'Nobody signed this bundle. Write how you made sure whose it is.'
    : `Nobody here knows the key that signed this bundle: ${inGroups(fingerprint)}. Write how you compared this fingerprint with the laboratory.`;
  return { code: 'invalid-input', message, next: 'For instance “fingerprint read out by telephone”. It is kept with the bundle.', fields: { checkedHow: message } };
}

/** Bundles of other laboratories that are kept as they came: looked into, never mixed with the house's own cases. */
export function createSealedBundlesServices(deps: WorkDeps): Pick<Services, Names> {
  return {
    'bundles.takeIn': changing(deps, 'bundles.takeIn', async ({ name, bytes, checkedHow }, { casebook, pool, call, change }) => {
      const task = await pool.run('check-bundle', bytes, { signal: call.signal });
      if (!task.ok) return taskFailure(task.error);
      const { keys } = await knownFor(casebook);
      const { verdict, sentence, next, faults, key, bundle } = judgeBundle(task.value, keys);
      if (verdict === 'altered' || verdict === 'not-a-bundle' || bundle === null) return err({ code: 'refused', message: `${sentence} ${faults[0]?.sentence ?? ''}`.trim(), next });
      if (keys.some((one) => one.own && one.publicKey === Buffer.from(task.value.publicKey ?? []).toString('hex'))) {
        return err({ code: 'refused', message: 'This is a bundle of this laboratory itself: its cases are in this casebook.', next: 'Take in only what another laboratory wrote.' });
      }
      const asked = whyAsked(verdict, key?.fingerprint ?? '', checkedHow);
      if (asked !== null) return err(asked);
      return casebook.sealedBundles.keep(change, { id: sha256(bytes), name, verdict, fingerprint: key?.fingerprint ?? '', checkedHow, summary: bundle, zip: bytes });
    }),

    'bundles.list': reading(deps, 'bundles.list', async (_input, { casebook }) => ok(await casebook.sealedBundles.list())),

    'bundles.open': reading(deps, 'bundles.open', async ({ id }, { casebook }) => {
      const bundle = await casebook.sealedBundles.get(id);
      if (bundle === null) return notFound('This bundle');
      const file = await fileOf(casebook, id, INDEX_NAME);
      return file.ok ? ok({ bundle, index: indexDocument.parse(parsed(file.value)) }) : file;
    }),

    'bundles.case': reading(deps, 'bundles.case', async ({ id, folder }, { casebook }) => {
      const file = await fileOf(casebook, id, `${folder}/case.json`);
      return file.ok ? ok(caseDocument.parse(parsed(file.value))) : file;
    }),

    'bundles.file': reading(deps, 'bundles.file', async ({ id, path }, { casebook }) => {
      const file = await fileOf(casebook, id, path);
      return file.ok ? ok({ name: path.split('/').at(-1) ?? 'file', bytes: Uint8Array.from(file.value) }) : file;
    }),
  };
}
