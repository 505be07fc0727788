import { bytesToHex } from '@noble/hashes/utils.js';
import { createHash } from 'node:crypto';
import type { z } from 'zod';
import { auditDocument, checkpointsDocument, indexDocument, manifestDocument, type IndexDocument, type ManifestDocument } from '../../app/bundle/bundle-documents.ts';
import { CHECKPOINTS_NAME, INDEX_NAME, MANIFEST_NAME, README_NAME, SEAL_NAME, SUMS_NAME } from '../../app/bundle/bundle-paths.ts';
import type { BundleFault, BundleSummary } from '../../app/bundle/bundle-verdict.ts';
import { caseDocument, custodyDocument, type CaseDocument } from '../../app/bundle/case-document.ts';
import type { BundleCheck } from '../../app/bundle/judge-bundle.ts';
import { readSeal, type Seal } from '../../app/bundle/seal.ts';
import { BUNDLE_REMARK, type ZipMember } from '../../app/bundle/zip-form.ts';
import type { ByteSource } from './byte-source.ts';
import { createLedgerCheck, type LedgerCheck } from './check-ledgers.ts';
import { digestOf } from './digest-of.ts';
import { fault, readArchive } from './read-archive.ts';
import { readMember, wholeMember } from './read-member.ts';

/** Longest document that is read as a whole. */
const MAX_DOCUMENT_BYTES = 256 * 1024 * 1024;
const MAX_SEAL_BYTES = 64 * 1024;
/** Before each file that is longer it is told how far the check has come, bytes; before the others now and then. */
const TOLD_BYTES = 1024 * 1024;
/** Faults that are named; more say nothing new. */
const MAX_FAULTS = 200;

const CASE_DOCUMENT = /^cases\/[^/]+\/(case|custody|audit)\.json$/;
const CHAIN = /^ledger\/(custody|audit)-chain-\d+\.txt$/;

type Seen = { readonly bytes: number; readonly sha256: string };
type State = {
  readonly source: ByteSource;
  readonly faults: BundleFault[];
  readonly seen: Map<string, Seen>;
  readonly ledgers: LedgerCheck;
  readonly cases: Map<string, { readonly id: string; readonly reports: CaseDocument['reports']; readonly raw: CaseDocument['rawRecords']; readonly exportedAt: string; readonly laboratory: string }>;
  index: IndexDocument | null;
  manifest: ManifestDocument | null;
};

/** A document in its schema; what does not fit is a fault with its place. */
function documentIn<S extends z.ZodType>(state: State, member: ZipMember, bytes: Uint8Array, schema: S): z.infer<S> | null {
  try {
    const read = schema.safeParse(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)));
    if (read.success) return read.data;
    const [issue] = read.error.issues;
    state.faults.push(fault('document', member.name, `“${member.name}” is not as its schema says${issue === undefined ? '' : `, at ${issue.path.join('.') || 'its beginning'}`}.`));
  } catch {
    state.faults.push(fault('document', member.name, `“${member.name}” is not JSON in UTF-8.`));
  }
  return null;
}

function takeDocument(state: State, member: ZipMember, bytes: Uint8Array): void {
  const folder = member.name.split('/').slice(0, 2).join('/');
  const kind = CASE_DOCUMENT.exec(member.name)?.[1];
  if (kind === 'case') {
    const read = documentIn(state, member, bytes, caseDocument);
    if (read !== null) state.cases.set(folder, { id: read.case.id, reports: read.reports, raw: read.rawRecords, exportedAt: read.exportedAt, laboratory: read.laboratory.name });
  } else if (kind === 'custody' || kind === 'audit') {
    const read = documentIn(state, member, bytes, kind === 'custody' ? custodyDocument : auditDocument);
    // case.json stands before both; where it does not, the entries belong to no case.
    if (read !== null) state.ledgers.entries(kind, member.name, state.cases.get(folder)?.id ?? '', read.entries);
  } else if (member.name === CHECKPOINTS_NAME) {
    const read = documentIn(state, member, bytes, checkpointsDocument);
    if (read !== null) state.ledgers.checkpoints(member.name, read);
  } else if (member.name === INDEX_NAME) state.index = documentIn(state, member, bytes, indexDocument);
  else state.manifest = documentIn(state, member, bytes, manifestDocument);
}

/** Reads one file, whole where it is a document, else piece by piece. */
function takeMember(state: State, member: ZipMember): void {
  const { source, faults, seen, ledgers } = state;
  const isDocument = CASE_DOCUMENT.test(member.name) || [CHECKPOINTS_NAME, INDEX_NAME, MANIFEST_NAME].includes(member.name);
  const chain = CHAIN.exec(member.name)?.[1] as 'custody' | 'audit' | undefined;
  if (isDocument) {
    const whole = wholeMember(source, member, MAX_DOCUMENT_BYTES);
    if (!whole.ok) {
      faults.push(whole.error);
      return;
    }
    seen.set(member.name, { bytes: member.size, sha256: createHash('sha256').update(whole.value).digest('hex') });
    takeDocument(state, member, whole.value);
    return;
  }
  const read = readMember(source, member, chain === undefined ? undefined : (piece) => { ledgers.chain(chain, member.name, Buffer.from(piece).toString('latin1')); });
  if (read.ok) seen.set(member.name, { bytes: member.size, sha256: read.value });
  else faults.push(read.error);
}

/** Every file against the manifest, and the manifest against the files. */
function compareManifest({ manifest, seen, faults }: State, members: readonly ZipMember[]): void {
  if (manifest === null) {
    faults.push(fault('manifest', MANIFEST_NAME, 'The list of files is missing or can’t be read.'));
    return;
  }
  const listed = new Map(manifest.files.map((one) => [one.path, one]));
  for (const { name } of members) {
    if (name === MANIFEST_NAME || name === SEAL_NAME) continue;
    const file = seen.get(name);
    const said = listed.get(name);
    listed.delete(name);
    if (said === undefined) faults.push(fault('added-file', name, `“${name}” is not in the list of files: it was added.`));
    else if (file !== undefined && (said.sha256 !== file.sha256 || said.bytes !== file.bytes)) faults.push(fault('altered-file', name, `“${name}” was altered: it does not give the SHA-256 that the list of files states.`));
  }
  for (const path of listed.keys()) faults.push(fault('missing-file', path, `“${path}” is in the list of files and not in the archive.`));
}

/** Reports and raw records against what the case's own document says of them. */
function compareCases({ cases, seen, index, faults }: State): void {
  for (const [folder, { reports, raw, id }] of cases) {
    for (const { path, pdfSha256 } of reports) if (seen.get(path)?.sha256 !== pdfSha256) faults.push(fault('report', path, `“${path}” is not the report that ${folder}/case.json names.`));
    for (const { path, sha256 } of raw) if (seen.get(path)?.sha256 !== sha256) faults.push(fault('report', path, `“${path}” is not the raw record that ${folder}/case.json names.`));
    if (index?.cases.find((one) => one.folder === folder)?.id !== id) faults.push(fault('document', INDEX_NAME, `The index does not name the case in ${folder}.`));
  }
  for (const { folder } of index?.cases ?? []) if (!cases.has(folder)) faults.push(fault('document', INDEX_NAME, `The case in ${folder} is missing.`));
}

/** The seal against everything that it is over, and against what the documents say. */
function compareSeal(state: State, members: readonly ZipMember[]): Seal | null {
  const { source, faults, seen, index, manifest } = state;
  const last = members.at(-1);
  const bytes = last?.name === SEAL_NAME ? wholeMember(source, last, MAX_SEAL_BYTES) : null;
  const seal = bytes?.ok === true ? readSeal(bytes.value) : null;
  if (last === undefined || seal === null) {
    faults.push(fault('seal', SEAL_NAME, 'The seal is missing, or its signature does not hold.'));
    return null;
  }
  const { statement, signed } = seal;
  const before = seen.get(MANIFEST_NAME);
  if (before !== undefined && (statement.manifest.sha256 !== before.sha256 || statement.manifest.bytes !== before.bytes)) faults.push(fault('manifest', MANIFEST_NAME, 'The list of files is not the one that was sealed.'));
  if (manifest !== null && (manifest.signed !== (signed !== null) || manifest.exportedAt !== statement.exportedAt)) faults.push(fault('seal', SEAL_NAME, 'The seal was exchanged: it does not belong to this list of files.'));
  if (index !== null) {
    const same = index.laboratory.name === statement.laboratory && index.demonstration === statement.demonstration && index.exportedAt === statement.exportedAt
      && index.cases.length === statement.cases && index.period?.from === statement.period?.from && index.period?.to === statement.period?.to;
    if (!same) faults.push(fault('seal', SEAL_NAME, 'The seal says something else of the bundle than its index.'));
    if (signed !== null && !index.keys.some(({ publicKey }) => publicKey === bytesToHex(signed.publicKey))) faults.push(fault('seal', SEAL_NAME, 'The seal was signed by a key that is not among the laboratory’s.'));
  }
  const order = members.slice(-3).map(({ name }) => name).join();
  if (order !== [SUMS_NAME, MANIFEST_NAME, SEAL_NAME].join()) faults.push(fault('seal', SEAL_NAME, 'Files stand after the list of files, or the seal is not the last.'));
  if (last.deflated || last.modified !== members.at(-2)?.modified) faults.push(fault('frame', SEAL_NAME, 'The header of the seal was altered.'));
  if (statement.body.bytes !== last.at || digestOf(source, last.at) !== statement.body.sha256) {
    faults.push(fault('frame', '', faults.length > 0 ? 'The archive does not give the SHA-256 that was sealed.' : 'Bytes between the files were altered: every file is as it was written, but the archive is not.'));
  }
  return seal;
}

/** Whether a file was written as a bundle, whatever happened to it since: its first file says so, and its end. */
function saysBundle(source: ByteSource): boolean {
  const beginning = Buffer.from(source.read(0, 256)).toString('latin1');
  const end = Buffer.from(source.read(Math.max(0, source.size - 4096), 4096)).toString('latin1');
  return (beginning.includes(README_NAME) && beginning.includes(BUNDLE_REMARK)) || end.includes(BUNDLE_REMARK);
}

function summaryOf({ index, cases, manifest, ledgers }: State): BundleSummary | null {
  if (index === null || manifest === null) return null;
  const all = [...cases.values()];
  return {
    laboratory: index.laboratory.name, demonstration: index.demonstration, exportedAt: index.exportedAt, period: index.period, cases: index.cases.map(({ number }) => number),
    files: manifest.files.length + 2, reports: all.reduce((sum, one) => sum + one.reports.length, 0), rawRecords: all.reduce((sum, one) => sum + one.raw.length, 0), ledgers: { ...ledgers.counts },
  };
}

/** `progress`: bytes that are done with, of how many, and the file that comes next. */
export type CheckOptions = { readonly progress?: (done: number, total: number, note: string) => void };

/** What the bytes of an archive say by themselves. Holds one document at a time; nothing is unpacked to disk. Never throws for what stands in it. */
export function checkBundle(source: ByteSource, { progress }: CheckOptions = {}): BundleCheck {
  const isBundle = saysBundle(source);
  const archive = readArchive(source);
  if (!archive.ok) return { isBundle, faults: [archive.error], summary: null, publicKey: null };
  if (!isBundle) return { isBundle, faults: [fault('foreign-bytes', '', 'It is a zip, but it does not hold what a bundle holds.')], summary: null, publicKey: null };
  const { members } = archive.value;
  const faults: BundleFault[] = [];
  const state: State = { source, faults, seen: new Map(), ledgers: createLedgerCheck(faults), cases: new Map(), index: null, manifest: null };
  for (const [i, member] of members.entries()) {
    if (i % 64 === 0 || member.packed > TOLD_BYTES) progress?.(member.at, source.size, member.name);
    if (member.name !== SEAL_NAME) takeMember(state, member);
    if (faults.length > MAX_FAULTS) break;
  }
  compareManifest(state, members);
  if (state.index === null) faults.push(fault('document', INDEX_NAME, 'The index is missing or can’t be read.'));
  else state.ledgers.finish(state.index);
  compareCases(state);
  const seal = compareSeal(state, members);
  return { isBundle, faults: onceEach(faults), summary: seal === null ? null : summaryOf(state), publicKey: seal?.signed?.publicKey ?? null };
}

/** A file that is damaged is named once: that its bytes were altered says more than what follows from it. */
function onceEach(faults: readonly BundleFault[]): BundleFault[] {
  const named = new Set<string>();
  const altered = faults.filter(({ code }) => code === 'altered-file');
  return [...altered, ...faults].filter(({ path, sentence }) => {
    const key = path === '' ? sentence : path;
    if (named.has(key)) return false;
    named.add(key);
    return true;
  }).slice(0, MAX_FAULTS);
}
