import { createHash } from 'node:crypto';
import { sha256Hex } from '../../app/custody/chain.ts';
import type { ReadDb } from '../handle.ts';
import { unpackRaw } from '../store/put-raw-record.ts';
import type { Vouched } from './ledgers.ts';
import { faultyPart, soundPart, type Pace, type Part } from './part.ts';

const BYTES_PER_VALUE = 8;

type Fault = string | null;

function digestOf(...parts: readonly Uint8Array[]): string {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex');
}

/** Checks the rows of a table one by one, in the order they were written, and stops at the first that does not fit. */
async function eachRow<Row>(db: ReadDb, part: Part['part'], table: string, columns: string, pace: Pace, check: (row: Row) => Fault): Promise<Part> {
  let after = 0;
  let checked = 0;
  for (;;) {
    const row = db.get<Row & { row_number: number }>(`SELECT rowid AS row_number, ${columns} FROM ${table} WHERE rowid > ? ORDER BY rowid LIMIT 1`, [after]);
    if (!row) return soundPart(part, checked);
    const fault = check(row);
    if (fault !== null) return faultyPart(part, checked, fault);
    after = row.row_number;
    checked += 1;
    await pace(checked);
  }
}

type RawRow = { id: string; name: string; packing: string; size: number; sha256: string; content: Buffer };

function rawFault(row: RawRow, vouched: Vouched): Fault {
  const changed = `The raw record “${row.name}” was changed: its bytes no longer give its digest.`;
  try {
    const bytes = unpackRaw(row.packing, row.content);
    if (bytes.byteLength !== row.size || digestOf(bytes) !== row.sha256) return changed;
  } catch {
    return changed;
  }
  const known = vouched.byId.get(row.id);
  if (known === undefined) return !vouched.complete ? null : `The raw record “${row.name}” is not named in the audit ledger: it was put in from outside.`;
  return known === row.sha256 ? null : `The raw record “${row.name}” was replaced: the audit ledger names another digest.`;
}

type SpectrumRow = { id: string; title: string; run: number; points: number; x: Buffer; y: Buffer; sha256: string };

function spectrumFault(row: SpectrumRow, vouched: Vouched): Fault {
  const name = `The spectrum “${row.title}” of run R${row.run}`;
  if (row.x.byteLength !== row.points * BYTES_PER_VALUE || row.y.byteLength !== row.points * BYTES_PER_VALUE || digestOf(row.x, row.y) !== row.sha256) {
    return `${name} was changed: its points no longer give its digest.`;
  }
  const known = vouched.byId.get(row.id);
  if (known === undefined) return !vouched.complete ? null : `${name} is not named in the audit ledger: it was put in from outside.`;
  return known === row.sha256 ? null : `${name} was replaced: the audit ledger names another digest.`;
}

type ReportRow = { number: string; revision: number; model: string; model_digest: string; pdf: Buffer; pdf_sha256: string };

function reportFault(row: ReportRow, vouched: Vouched): Fault {
  const name = `The report ${row.number}${row.revision > 1 ? `, revision ${row.revision},` : ''}`;
  if (digestOf(row.pdf) !== row.pdf_sha256) return `${name} was changed: its pages no longer give their digest.`;
  if (sha256Hex(row.model) !== row.model_digest) return `${name} was changed: its content no longer gives its digest.`;
  const known = vouched.reports.get(`${row.number}/${row.revision}`);
  if (known === undefined) return !vouched.complete ? null : `${name} is not named in the audit ledger: it was put in from outside.`;
  return known.pdf === row.pdf_sha256 && known.model === row.model_digest ? null : `${name} was replaced: the audit ledger names another digest.`;
}

/** Withdrawn reports are kept as they were and are no fault: the part says which they are. */
function withWithdrawn(part: Part, db: ReadDb): Part {
  const rows = db.all<{ name: string }>(`SELECT r.number || ' revision ' || r.revision AS name FROM report_withdrawal w JOIN report r ON r.id = w.report_id ORDER BY r.number, r.revision`);
  return rows.length === 0 ? part : { ...part, note: [part.note, `Withdrawn, and kept as printed: ${rows.map((row) => row.name).join(', ')}.`].filter((text) => text !== undefined).join(' ') };
}

/** Recomputes the digests of raw records, spectra and issued reports, and compares them with what the audit ledger says. */
export async function verifyRecords(db: ReadDb, vouched: Vouched, pace: Pace): Promise<Part[]> {
  return [
    await eachRow<RawRow>(db, 'raw records', 'raw_record', 'id, name, packing, size, sha256, content', pace, (row) => rawFault(row, vouched)),
    await eachRow<SpectrumRow>(db, 'spectra', 'spectrum', `id, title, (SELECT r.number FROM test_run r WHERE r.id = run_id) AS run, points, x, y, sha256`, pace, (row) => spectrumFault(row, vouched)),
    await eachRow<ReportRow>(db, 'issued reports', 'report', 'number, revision, model, model_digest, pdf, pdf_sha256', pace, (row) => reportFault(row, vouched)).then((part) => withWithdrawn(part, db)),
  ];
}
