import type { BundleStatement, CheckpointsDocument, IndexDocument, ManifestDocument, Period } from '../../app/bundle/bundle-documents.ts';
import { CHAIN_PART, chainName, CHECKPOINTS_NAME, INDEX_NAME, MANIFEST_NAME, README_NAME, SEAL_NAME, SUMS_NAME, type LedgerWord } from '../../app/bundle/bundle-paths.ts';
import { bundleReadme } from '../../app/bundle/bundle-readme.ts';
import { jsonSchemas } from '../../app/bundle/json-schemas.ts';
import { writeSeal } from '../../app/bundle/seal.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { publicKeyFromHex } from '../../app/signature/fingerprint.ts';
import { writePublicKeyFile } from '../../app/signature/public-key-file.ts';
import { statementBytes } from '../../app/signature/signed-statement.ts';
import { chainOf, checkpointsUpTo, headsOf, type CaseToBundle } from '../../db/store/bundle-records.ts';
import { notFound } from '../services/failures.ts';
import type { Work } from '../services/work-context.ts';
import { createArchiveWriter, type ArchiveWriter } from './archive-writer.ts';
import { bundleCase, type WrittenCase } from './bundle-case.ts';
import type { ByteSink } from './byte-sink.ts';
import { jsonBytes } from './json-bytes.ts';

export type BundleJob = {
  readonly cases: readonly CaseToBundle[];
  readonly period: Period | null;
  readonly sink: ByteSink;
  readonly progress?: (done: number, total: number, note: string) => void;
};
export type WrittenBundle = { readonly bytes: number; readonly sha256: string; readonly cases: number; readonly files: number; /** Empty where it was signed. */ readonly unsignedBecause: string };

const text = (content: string): Uint8Array => new TextEncoder().encode(content);
const stopped = (): { readonly ok: false; readonly error: Failure } => err({ code: 'cancelled', message: 'The bundle was stopped; nothing was kept.', next: 'Start it again when you want it.' });

/** Whether the key signs now, asked with a statement of its own: README and manifest come before the seal and must say so. Empty where it does. */
async function whyUnsigned({ signer, at, casebook }: Work): Promise<Result<string, Failure>> {
  const tried = await signer.sign(statementBytes({ statement: 'culet-bundle-begun-1', at }));
  if (tried.ok) return ok('');
  return tried.error.code === 'locked' || await casebook.keys.current() === null ? ok(tried.error.message) : tried;
}

async function addKeys({ casebook }: Work, archive: ArchiveWriter, laboratory: { name: string; isDemonstration: boolean }): Promise<Result<IndexDocument['keys'], Failure>> {
  const listed: IndexDocument['keys'] = [];
  for (const { id, publicKey, fingerprint, createdAt } of await casebook.keys.list()) {
    const bytes = publicKeyFromHex(publicKey);
    if (bytes === null) continue;
    const path = `keys/laboratory-key-${id}.pem`;
    const added = await archive.add({ path, bytes: text(writePublicKeyFile({ laboratory: laboratory.name, publicKey: bytes, madeAt: createdAt, invented: laboratory.isDemonstration })), modified: createdAt });
    if (!added.ok) return added;
    listed.push({ id, publicKey, fingerprint, madeAt: createdAt, path });
  }
  return ok(listed);
}

/** The digests of a ledger from the entry before the first that is in the bundle to the head: entries left out stand by their digest. */
async function addChain(ledger: LedgerWord, first: number | null, { casebook, at, call }: Work, archive: ArchiveWriter, head: { seq: number; hash: string }): Promise<Result<IndexDocument['ledgers'][LedgerWord], Failure>> {
  const from = first === null ? 0 : Math.max(1, first - 1);
  const files: string[] = [];
  for (let start = from; first !== null && start <= head.seq; start += CHAIN_PART) {
    if (call.signal.aborted) return stopped();
    const rows = chainOf(casebook.handle.read, ledger, start, Math.min(head.seq, start + CHAIN_PART - 1));
    const path = chainName(ledger, files.length + 1);
    const added = await archive.add({ path, bytes: text(rows.map(({ seq, hash }) => `${seq} ${hash}\n`).join('')), modified: at });
    if (!added.ok) return added;
    files.push(path);
  }
  return ok({ from, head, entries: first === null ? 0 : head.seq - from + 1, files });
}

const lowest = (cases: readonly WrittenCase[], ledger: LedgerWord): number | null =>
  cases.map(({ first }) => first[ledger]).reduce<number | null>((least, one) => (one === null ? least : least === null ? one : Math.min(least, one)), null);

async function addLedgers(cases: readonly WrittenCase[], work: Work, archive: ArchiveWriter): Promise<Result<IndexDocument['ledgers'], Failure>> {
  const { casebook, at } = work;
  const heads = headsOf(casebook.handle.read);
  const checkpoints: CheckpointsDocument = { schema: 'culet-checkpoints-1', checkpoints: checkpointsUpTo(casebook.handle.read, heads) };
  const kept = await archive.add({ path: CHECKPOINTS_NAME, bytes: jsonBytes(checkpoints), modified: at });
  if (!kept.ok) return kept;
  const custody = await addChain('custody', lowest(cases, 'custody'), work, archive, heads.custody);
  if (!custody.ok) return custody;
  const audit = await addChain('audit', lowest(cases, 'audit'), work, archive, heads.audit);
  return audit.ok ? ok({ custody: custody.value, audit: audit.value, checkpoints: checkpoints.checkpoints.length }) : audit;
}

/** Sums, manifest and seal: the last three files, over all that came before. */
async function close(archive: ArchiveWriter, { signer, at }: Work, unsignedBecause: string, said: Omit<BundleStatement, 'statement' | 'manifest' | 'body'>): Promise<Result<null, Failure>> {
  const sums = await archive.add({ path: SUMS_NAME, bytes: text(archive.written.map(({ path, sha256 }) => `${sha256}  ${path}\n`).join('')), modified: at });
  if (!sums.ok) return sums;
  const content: ManifestDocument = { schema: 'culet-bundle-manifest-1', exportedAt: at, signed: unsignedBecause === '', unsignedBecause, files: archive.written.map((one) => ({ ...one })) };
  const manifest = await archive.add({ path: MANIFEST_NAME, bytes: jsonBytes(content), modified: at });
  if (!manifest.ok) return manifest;
  const statement: BundleStatement = { statement: 'culet-bundle-1', ...said, manifest: { bytes: manifest.value.bytes, sha256: manifest.value.sha256 }, body: archive.body() };
  const signed = unsignedBecause === '' ? await signer.sign(statementBytes(statement)) : null;
  if (signed !== null && !signed.ok) return signed;
  const seal = await archive.add({ path: SEAL_NAME, bytes: writeSeal({ statement, signed: signed === null ? null : signed.value }), modified: at, store: true });
  return seal.ok ? ok(null) : seal;
}

async function writeAll({ cases, period, progress }: BundleJob, work: Work, archive: ArchiveWriter): Promise<Result<string, Failure>> {
  const { casebook, at, call } = work;
  const laboratory = await casebook.laboratory.get();
  if (laboratory === null || cases.length === 0) return notFound('This case');
  const { name, address, zone, isDemonstration } = laboratory;
  const unsigned = await whyUnsigned(work);
  if (!unsigned.ok) return unsigned;
  const readme = bundleReadme({ laboratory: name, exportedAt: at, demonstration: isDemonstration, cases: cases.map((one) => one.number), period, zone, unsignedBecause: unsigned.value });
  const opened = await archive.add({ path: README_NAME, bytes: text(readme), modified: at, store: true });
  if (!opened.ok) return opened;
  for (const { path, schema } of jsonSchemas()) {
    const added = await archive.add({ path, bytes: jsonBytes(schema), modified: at });
    if (!added.ok) return added;
  }
  const keys = await addKeys(work, archive, laboratory);
  if (!keys.ok) return keys;
  const written: WrittenCase[] = [];
  for (const one of cases) {
    if (call.signal.aborted) return stopped();
    progress?.(written.length, cases.length, one.number);
    const done = await bundleCase(one.id, work, archive);
    if (!done.ok) return done;
    written.push(done.value);
  }
  progress?.(cases.length, cases.length, 'ledgers and seal');
  const ledgers = await addLedgers(written, work, archive);
  if (!ledgers.ok) return ledgers;
  const index: IndexDocument = {
    schema: 'culet-bundle-index-1', exportedAt: at, demonstration: isDemonstration, laboratory: { name, address, zone }, period,
    cases: written.map(({ entry }) => entry), keys: keys.value, ledgers: ledgers.value,
  };
  const indexed = await archive.add({ path: INDEX_NAME, bytes: jsonBytes(index), modified: at });
  if (!indexed.ok) return indexed;
  const closed = await close(archive, work, unsigned.value, { laboratory: name, demonstration: isDemonstration, exportedAt: at, period, cases: cases.length });
  return closed.ok ? unsigned : closed;
}

/** Writes a bundle of cases into `sink`, one file after another; where it fails or is stopped, nothing stays. */
export async function writeBundle(job: BundleJob, work: Work): Promise<Result<WrittenBundle, Failure>> {
  const archive = createArchiveWriter(job.sink, work.pool, work.call.signal);
  try {
    const done = await writeAll(job, work, archive);
    if (!done.ok) {
      await job.sink.discard();
      return done;
    }
    return ok({ ...await archive.finish(), cases: job.cases.length, files: archive.written.length, unsignedBecause: done.value });
  } catch (fault) {
    await job.sink.discard();
    throw fault;
  }
}
