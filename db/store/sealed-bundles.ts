import { createHash } from 'node:crypto';
import { bundleSummary, type BundleSummary } from '../../app/bundle/bundle-verdict.ts';
import type { SealedBundleView } from '../../app/contract/bundles.ts';
import { canonicalJson, type JsonValue } from '../../app/custody/canonical-json.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { sealedBundle } from '../schema/index.ts';
import { dropLeftOver, PIECE_BYTES, putPiece } from './bundle-pieces.ts';

export type NewSealedBundle = {
  /** SHA-256 of the zip. */
  readonly id: string;
  readonly name: string; readonly verdict: SealedBundleView['verdict']; readonly fingerprint: string; readonly checkedHow: string;
  readonly summary: BundleSummary;
  /** Length of the zip, bytes. */
  readonly size: number;
};

/** How the bytes of a bundle are brought, and how somebody may stop it. */
export type BundleBytes = {
  /** Fewer than asked for only at the end. */
  read(at: number, length: number): Uint8Array;
  /** Between two pieces: how many bytes are kept; false stops it. Others get their turn meanwhile. */
  pace(kept: number): Promise<boolean>;
};

export type SealedBundlesStore = {
  /** Newest first, without their bytes. */
  list(): Promise<SealedBundleView[]>;
  get(id: string): Promise<SealedBundleView | null>;
  /** A piece of the zip as it came, `length` bytes from `at`; fewer only at the end. */
  read(id: string, at: number, length: number): Uint8Array;
  /** Keeps it as it came, piece by piece; a conflict where the same bytes are kept already. Nothing of it stays where it is stopped, or where the bytes do not give its id. */
  keep(change: Change & { readonly personId: string }, bundle: NewSealedBundle, bytes: BundleBytes): Promise<Result<SealedBundleView, Failure>>;
};

type Row = { id: string; name: string; verdict: SealedBundleView['verdict']; fingerprint: string; checkedHow: string; summary: string; size: number; takenAt: string; takenBy: string };
const SELECT = `SELECT b.id, b.name, b.verdict, b.fingerprint, b.checked_how AS checkedHow, b.summary, b.size, b.taken_at AS takenAt, p.name AS takenBy
  FROM sealed_bundle b JOIN person p ON p.id = b.taken_by`;

const viewOf = ({ summary, ...row }: Row): SealedBundleView => ({ ...row, summary: bundleSummary.parse(JSON.parse(summary)) });

function byId(db: ReadDb | WriteTx, id: string): SealedBundleView | null {
  const row = db.get<Row>(`${SELECT} WHERE b.id = @id`, { id });
  return row === undefined ? null : viewOf(row);
}

const takenAlready = (before: SealedBundleView): { readonly ok: false; readonly error: Failure } =>
  err({ code: 'conflict', message: `This very bundle was taken in already, on ${before.takenAt.slice(0, 10)} by ${before.takenBy}.`, next: 'Nothing needs to be done.' });

const STOPPED: Failure = { code: 'cancelled', message: 'Taking the bundle in was stopped; nothing of it was kept.', next: 'Start it again when you want it.' };
const CHANGED: Failure = { code: 'refused', message: 'The file changed while it was taken in; nothing of it was kept.', next: 'Copy it to this machine’s own disk and try again.' };
const FULL: Failure = { code: 'refused', message: 'The bundle could not be kept: the disk of the casebook is full. Nothing of it was kept.', next: 'Make room on that disk, then try again.' };

async function dropAll(handle: StoreHandle, pace: () => Promise<unknown>): Promise<void> {
  while (await handle.transact((tx) => dropLeftOver(tx)) > 0) await pace();
}

/** Writes the pieces; null where all are there and give the id. */
async function putPieces(handle: StoreHandle, { id, size }: NewSealedBundle, { read, pace }: BundleBytes): Promise<Failure | null> {
  const hash = createHash('sha256');
  for (let at = 0; at < size; at += PIECE_BYTES) {
    const bytes = read(at, Math.min(PIECE_BYTES, size - at));
    if (bytes.byteLength === 0) return CHANGED;
    hash.update(bytes);
    await putPiece(handle, id, at / PIECE_BYTES, bytes);
    if (!await pace(at + bytes.byteLength)) return STOPPED;
  }
  return hash.digest('hex') === id ? null : CHANGED;
}

const BUSY: Failure = { code: 'busy', message: 'Another bundle is being taken in.', next: 'Wait until it is kept, then try again.' };

const isFull = (fault: unknown): boolean => fault instanceof Error && 'code' in fault && fault.code === 'SQLITE_FULL';

function insertBundle(tx: WriteTx, change: Change & { readonly personId: string }, { id, name, verdict, fingerprint, checkedHow, summary, size }: NewSealedBundle): Result<SealedBundleView, Failure> {
  const { laboratory } = summary;
  tx.orm.insert(sealedBundle).values({
    id, name, laboratory, verdict, fingerprint, checkedHow, summary: canonicalJson(summary as unknown as JsonValue), size, zip: Buffer.alloc(0), takenAt: change.at, takenBy: change.personId,
  }).run();
  appendAudit(tx, change, { subject: id, caseId: null, content: { name, laboratory, verdict, fingerprint, checkedHow, cases: summary.cases.length } });
  return ok(byId(tx, id)!);
}

export function createSealedBundlesStore(handle: StoreHandle): SealedBundlesStore {
  /** The zip of a bundle from before there were pieces, looked at a moment ago. */
  let whole: { readonly id: string; readonly zip: Uint8Array } | null = null;

  function zipOf(id: string): Uint8Array {
    if (whole?.id !== id) whole = { id, zip: handle.read.get<{ zip: Buffer }>('SELECT zip FROM sealed_bundle WHERE id = ?', [id])?.zip ?? new Uint8Array(0) };
    return whole.zip;
  }

  /** Pieces of one bundle at a time stand without their bundle: they would be taken for left over. */
  let busy = false;

  async function keepPieces(change: Change & { readonly personId: string }, bundle: NewSealedBundle, bytes: BundleBytes): Promise<Result<SealedBundleView, Failure>> {
    const undo = (): Promise<void> => dropAll(handle, () => bytes.pace(0));
    try {
      await undo();
      const wrong = await putPieces(handle, bundle, bytes);
      if (wrong === null) return await handle.transactResult((tx) => insertBundle(tx, change, bundle));
      await undo();
      return err(wrong);
    } catch (fault) {
      await undo().catch(() => undefined);
      if (isFull(fault)) return err(FULL);
      throw fault;
    }
  }

  return {
    async list() { return handle.read.all<Row>(`${SELECT} ORDER BY b.taken_at DESC, b.rowid DESC`, {}).map(viewOf); },
    async get(id) {
      // What is read afterwards is read anew.
      whole = null;
      return byId(handle.read, id);
    },
    read(id, at, length) {
      const zip = zipOf(id);
      if (zip.byteLength > 0) return zip.subarray(at, at + length);
      const wanted = new Uint8Array(length);
      let done = 0;
      while (done < length) {
        const place = at + done;
        const row = handle.read.get<{ bytes: Buffer }>('SELECT bytes FROM sealed_bundle_piece WHERE bundle_id = ? AND seq = ?', [id, Math.floor(place / PIECE_BYTES)]);
        const bytes = row?.bytes.subarray(place % PIECE_BYTES, place % PIECE_BYTES + length - done) ?? new Uint8Array(0);
        if (bytes.byteLength === 0) break;
        wanted.set(bytes, done);
        done += bytes.byteLength;
      }
      return wanted.subarray(0, done);
    },
    async keep(change, bundle, bytes) {
      const known = byId(handle.read, bundle.id);
      if (known !== null) return takenAlready(known);
      if (busy) return err(BUSY);
      busy = true;
      try {
        return await keepPieces(change, bundle, bytes);
      } finally {
        busy = false;
      }
    },
  };
}
