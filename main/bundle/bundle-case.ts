import type { AuditDocument, IndexDocument } from '../../app/bundle/bundle-documents.ts';
import type { CaseDocument, CustodyDocument } from '../../app/bundle/case-document.ts';
import { safeName, uniqueNames } from '../../app/bundle/safe-name.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { dayInZone } from '../../app/custody/calendar.ts';
import { lotFigures } from '../../app/lots/lot-statement.ts';
import { statementSentences } from '../../app/lots/statement-words.ts';
import { ok, type Result } from '../../app/result.ts';
import { auditStatements, rawTimes } from '../../db/store/bundle-records.ts';
import { caseRecords, custodyStatements, rawRecordsOfCase, type CaseRecords } from '../../db/store/case-records.ts';
import { readRawRecord } from '../../db/store/put-raw-record.ts';
import { notFound } from '../services/failures.ts';
import { issuedPages } from '../services/issued-pages.ts';
import { lotsAndWeights, type LotsAndWeights } from '../services/lots-and-weights.ts';
import type { Work } from '../services/work-context.ts';
import type { ArchiveWriter } from './archive-writer.ts';
import { jsonBytes } from './json-bytes.ts';

/** What is worth knowing of a case once it is written. */
export type WrittenCase = {
  readonly entry: IndexDocument['cases'][number];
  /** Lowest number of an entry of each ledger that concerns the case; null where there is none. */
  readonly first: { readonly custody: number | null; readonly audit: number | null };
};

function caseDocument(records: CaseRecords, { lots, weights }: LotsAndWeights, at: string, reports: CaseDocument['reports'], rawRecords: CaseDocument['rawRecords']): CaseDocument {
  const { name, address, zone, isDemonstration } = records.laboratory;
  const labels = new Map(records.case.parcels.flatMap((parcel) => parcel.items).map((item) => [item.id, item.label]));
  return {
    schema: 'culet-case-1', exportedAt: at, demonstration: isDemonstration, laboratory: { name, address, zone }, case: records.case,
    stones: records.stones.map(({ stone, item, runs, findings, conclusions, proposal }) => ({ stone, item: item.label, runs, findings, conclusions, proposal })),
    lots: lots.map(({ lot, results, book }) => ({
      item: lot.label, book: [...book], results: [...results],
      statement: lot.count === null ? [] : statementSentences(lotFigures(lot.count, results, lot.plan?.content ?? null), lot.plan?.content ?? null),
    })),
    mountedWeights: weights.filter((one) => one.weights.stones.some((stone) => stone.estimate !== null)).map((one) => ({ item: labels.get(one.itemId) ?? '', ...one.weights })),
    reports, rawRecords,
  };
}

/** Every raw record, read one at a time, byte for byte; refuses where one no longer has its digest. */
async function addRawRecords(listed: CaseDocument['rawRecords'], times: ReadonlyMap<string, string>, { casebook, at }: Work, archive: ArchiveWriter): Promise<Result<null, Failure>> {
  for (const { id, path, mediaType } of listed) {
    const record = readRawRecord(casebook.handle.read, id);
    if (!record.ok) return record;
    const added = await archive.add({ path, bytes: record.value.bytes, modified: times.get(id) ?? at, store: mediaType.startsWith('image/') });
    if (!added.ok) return added;
  }
  return ok(null);
}

async function addReports(listed: CaseDocument['reports'], work: Work, archive: ArchiveWriter): Promise<Result<null, Failure>> {
  for (const { id, path, issuedAt } of listed) {
    const stored = await issuedPages(id, work);
    if (!stored.ok) return stored;
    const added = await archive.add({ path, bytes: stored.value.pdf, modified: issuedAt, store: true });
    if (!added.ok) return added;
  }
  return ok(null);
}

/** Writes one case into its folder of the archive: documents first, then its reports and raw records. Never more than one of these is held. */
export async function bundleCase(caseId: string, work: Work, archive: ArchiveWriter): Promise<Result<WrittenCase, Failure>> {
  const { casebook, stores, at } = work;
  const db = casebook.handle.read;
  const records = await caseRecords(casebook.handle, caseId, at);
  if (records === null) return notFound('This case');
  const { number } = records.case;
  const folder = `cases/${safeName(number)}`;
  const nameOnce = uniqueNames();
  const raw: CaseDocument['rawRecords'] = rawRecordsOfCase(db, caseId).map(({ runs, name, mediaType, sha256, size, id }) => ({
    id, path: nameOnce(`${folder}/raw/${runs[0] ?? (mediaType.startsWith('image/') ? 'photo' : 'list')}-${sha256.slice(0, 8)}-${safeName(name)}`), name, mediaType, size, sha256, runs: [...runs],
  }));
  const reports: CaseDocument['reports'] = (await stores.reports.list(caseId)).map((row) => (
    { ...row, path: nameOnce(`${folder}/reports/${safeName(row.revision > 1 ? `${row.number}-revision-${row.revision}` : row.number)}.pdf`) }));
  const custody: CustodyDocument = { schema: 'culet-custody-1', exportedAt: at, caseNumber: number, entries: custodyStatements(db, caseId) };
  const audit: AuditDocument = { schema: 'culet-audit-1', exportedAt: at, caseNumber: number, entries: auditStatements(db, caseId) };
  const documents: readonly (readonly [string, unknown])[] = [
    ['case.json', caseDocument(records, await lotsAndWeights(records.case, work), at, reports, raw)], ['custody.json', custody], ['audit.json', audit],
  ];
  for (const [name, content] of documents) {
    const added = await archive.add({ path: `${folder}/${name}`, bytes: jsonBytes(content), modified: at });
    if (!added.ok) return added;
  }
  const kept = await addReports(reports, work, archive);
  if (!kept.ok) return kept;
  const read = await addRawRecords(raw, rawTimes(db, caseId), work, archive);
  if (!read.ok) return read;
  const items = records.case.parcels.flatMap((parcel) => parcel.items);
  const { receivedAt, state, client } = records.case;
  return ok({
    entry: {
      number, id: caseId, receivedAt, receivedOn: dayInZone(receivedAt, records.laboratory.zone), client: client.name, state, folder,
      items: items.length, stones: records.stones.length, reports: reports.map((row) => row.number), rawRecords: raw.length,
    },
    first: { custody: custody.entries[0]?.statement.seq ?? null, audit: audit.entries[0]?.statement.seq ?? null },
  });
}
