import { createHash } from 'node:crypto';
import { bundleReadme } from '../../app/bundle/bundle-readme.ts';
import type { CaseDocument, CustodyDocument } from '../../app/bundle/case-document.ts';
import { safeName, uniqueNames } from '../../app/bundle/safe-name.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { lotFigures } from '../../app/lots/lot-statement.ts';
import { statementSentences } from '../../app/lots/statement-words.ts';
import { ok, type Result } from '../../app/result.ts';
import { caseRecords, custodyStatements, rawRecordsOfCase, type CaseRecords } from '../../db/store/case-records.ts';
import { readRawRecord } from '../../db/store/put-raw-record.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { ZipEntry } from '../workers/tasks/zip-files.ts';
import { notFound } from './failures.ts';
import { lotsAndWeights, type LotsAndWeights } from './lots-and-weights.ts';
import { ownedBytes } from './owned-bytes.ts';
import type { Services } from './service.ts';
import { reading, type Work, type WorkDeps } from './work-context.ts';

type Part<Listed> = { readonly entries: ZipEntry[]; readonly listed: Listed[] };
type Names = (path: string) => string;

const text = (path: string, content: string): ZipEntry => ({ path, bytes: Buffer.from(content, 'utf8') });
const json = (path: string, content: unknown): ZipEntry => text(path, `${JSON.stringify(content, null, 2)}\n`);

/** Every raw record of the case, byte for byte; refuses where one no longer has its digest. */
function rawPart(caseId: string, { casebook }: Work, nameOnce: Names): Result<Part<CaseDocument['rawRecords'][number]>, Failure> {
  const db = casebook.handle.read;
  const part: Part<CaseDocument['rawRecords'][number]> = { entries: [], listed: [] };
  for (const { id, runs } of rawRecordsOfCase(db, caseId)) {
    const record = readRawRecord(db, id);
    if (!record.ok) return record;
    const { name, mediaType, size, sha256, bytes } = record.value;
    const path = nameOnce(`raw/${runs[0] ?? (mediaType.startsWith('image/') ? 'photo' : 'list')}-${sha256.slice(0, 8)}-${safeName(name)}`);
    part.entries.push({ path, bytes });
    part.listed.push({ id, path, name, mediaType, size, sha256, runs: [...runs] });
  }
  return ok(part);
}

async function reportPart(caseId: string, { stores }: Work, nameOnce: Names): Promise<Part<CaseDocument['reports'][number]>> {
  const part: Part<CaseDocument['reports'][number]> = { entries: [], listed: [] };
  for (const row of await stores.reports.list(caseId)) {
    const stored = await stores.reports.content(row.id);
    if (stored === null) continue;
    const path = nameOnce(`reports/${safeName(stored.name)}`);
    part.entries.push({ path, bytes: stored.pdf });
    part.listed.push({ ...row, path });
  }
  return part;
}

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

const sums = (entries: readonly ZipEntry[]): string =>
  entries.map(({ path, bytes }) => `${createHash('sha256').update(bytes).digest('hex')}  ${path}\n`).join('');

async function bundleEntries(caseId: string, work: Work): Promise<Result<{ number: string; entries: ZipEntry[] }, Failure>> {
  const { casebook, at } = work;
  const records = await caseRecords(casebook.handle, caseId, at);
  if (records === null) return notFound('This case');
  const nameOnce = uniqueNames();
  const raw = rawPart(caseId, work, nameOnce);
  if (!raw.ok) return raw;
  const reports = await reportPart(caseId, work, nameOnce);
  const { number } = records.case;
  const custody: CustodyDocument = { schema: 'culet-custody-1', exportedAt: at, caseNumber: number, entries: custodyStatements(casebook.handle.read, caseId) };
  const readme = bundleReadme({ caseNumber: number, exportedAt: at, demonstration: records.laboratory.isDemonstration });
  const entries = [
    text('README.txt', readme), json('case.json', caseDocument(records, await lotsAndWeights(records.case, work), at, reports.listed, raw.value.listed)), json('custody.json', custody),
    ...reports.entries, ...raw.value.entries,
  ];
  return ok({ number, entries: [...entries, text('SHA256SUMS', sums(entries))] });
}

export function createBundleService(deps: WorkDeps): Services['cases.bundle'] {
  return reading(deps, 'cases.bundle', async ({ caseId }, work) => {
    const content = await bundleEntries(caseId, work);
    if (!content.ok) return content;
    const { number, entries } = content.value;
    const zip = await work.pool.run('zip-files', { entries, at: work.at }, { signal: work.call.signal });
    return zip.ok ? ok({ name: `${safeName(number)}.zip`, zip: ownedBytes(zip.value) }) : taskFailure(zip.error);
  });
}
