import { createHash } from 'node:crypto';
import type { ReadDb } from '../handle.ts';
import { bundlePieces } from '../store/bundle-pieces.ts';
import { unpackRaw } from '../store/put-raw-record.ts';
import type { Pace } from './part.ts';
import type { Range } from './ranges.ts';

const BYTES_PER_VALUE = 8;

export type RecordTable = 'raw_record' | 'spectrum' | 'report' | 'sealed_bundle';

/** A record as it stands: how it is named in a sentence that begins with it, what is wrong with it by itself (or null), and what the audit ledger must name of it. */
export type FoundRecord = { readonly key: string; readonly name: string; readonly wrong: string | null; readonly digests: readonly string[] };
export type RecordsFound = { readonly records: FoundRecord[] };

function digestOf(...parts: readonly Uint8Array[]): string {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex');
}

type RawRow = { id: string; name: string; packing: string; size: number; sha256: string; content: Buffer };

function rawFits(row: RawRow): boolean {
  try {
    const bytes = unpackRaw(row.packing, row.content);
    return bytes.byteLength === row.size && digestOf(bytes) === row.sha256;
  } catch {
    return false;
  }
}

function rawRecord(row: RawRow): FoundRecord {
  const name = `The raw record “${row.name}”`;
  return { key: row.id, name, wrong: rawFits(row) ? null : `${name} was changed: its bytes no longer give its digest.`, digests: [row.sha256] };
}

type SpectrumRow = { id: string; title: string; run: number; points: number; x: Buffer; y: Buffer; sha256: string };

function spectrumRecord(row: SpectrumRow): FoundRecord {
  const name = `The spectrum “${row.title}” of run R${row.run}`;
  const fits = row.x.byteLength === row.points * BYTES_PER_VALUE && row.y.byteLength === row.points * BYTES_PER_VALUE && digestOf(row.x, row.y) === row.sha256;
  return { key: row.id, name, wrong: fits ? null : `${name} was changed: its points no longer give its digest.`, digests: [row.sha256] };
}

type ReportRow = { number: string; revision: number; model: string; model_digest: string; pdf: Buffer; pdf_sha256: string };

function reportWrong(row: ReportRow): string | null {
  if (digestOf(row.pdf) !== row.pdf_sha256) return 'was changed: its pages no longer give their digest.';
  return digestOf(Buffer.from(row.model, 'utf8')) === row.model_digest ? null : 'was changed: its content no longer gives its digest.';
}

function reportRecord(row: ReportRow): FoundRecord {
  const name = `The report ${row.number}${row.revision > 1 ? `, revision ${row.revision},` : ''}`;
  const wrong = reportWrong(row);
  return { key: `${row.number}/${row.revision}`, name, wrong: wrong === null ? null : `${name} ${wrong}`, digests: [row.model_digest, row.pdf_sha256] };
}

type BundleRow = { id: string; name: string; laboratory: string; size: number; zip: Buffer };

/** A bundle of another laboratory, piece by piece: its id is the digest of its bytes. */
async function bundleRecord(db: ReadDb, row: BundleRow, pace: Pace): Promise<FoundRecord> {
  const hash = createHash('sha256');
  let size = 0;
  for (const bytes of bundlePieces(db, row.id, row.zip)) {
    hash.update(bytes);
    size += bytes.byteLength;
    await pace(0);
  }
  const name = `The bundle “${row.name}” of ${row.laboratory}`;
  return { key: row.id, name, wrong: size === row.size && hash.digest('hex') === row.id ? null : `${name} was changed: its bytes no longer give its digest.`, digests: [] };
}

const READ: Readonly<Record<Exclude<RecordTable, 'sealed_bundle'>, { readonly columns: string; readonly found: (row: never) => FoundRecord }>> = {
  raw_record: { columns: 'id, name, packing, size, sha256, content', found: rawRecord },
  spectrum: { columns: 'id, title, (SELECT r.number FROM test_run r WHERE r.id = run_id) AS run, points, x, y, sha256', found: spectrumRecord },
  report: { columns: 'number, revision, model, model_digest, pdf, pdf_sha256', found: reportRecord },
};

/** Reports that were withdrawn, as they are named. */
export const withdrawnPiece = (db: ReadDb): string[] =>
  db.all<{ name: string }>(`SELECT r.number || ' revision ' || r.revision AS name FROM report_withdrawal w JOIN report r ON r.id = w.report_id ORDER BY r.number, r.revision`).map(({ name }) => name);

/** Recomputes the digests of records one by one: each may be tens of megabytes. */
export async function recordsPiece(db: ReadDb, table: RecordTable, range: Range, pace: Pace): Promise<RecordsFound> {
  const { columns, found } = table === 'sealed_bundle' ? { columns: 'id, name, laboratory, size, zip', found: (row: BundleRow) => bundleRecord(db, row, pace) } : READ[table];
  const records: FoundRecord[] = [];
  let { after } = range;
  for (;;) {
    const row = db.get<{ row_number: number }>(`SELECT rowid AS row_number, ${columns} FROM ${table} WHERE rowid > ? AND rowid <= ? ORDER BY rowid LIMIT 1`, [after, range.upTo]);
    if (!row) return { records };
    records.push(await found(row as never));
    after = row.row_number;
    await pace(1);
  }
}
