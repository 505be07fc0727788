import { bundleSummary, type BundleSummary } from '../../app/bundle/bundle-verdict.ts';
import type { SealedBundleView } from '../../app/contract/bundles.ts';
import { canonicalJson, type JsonValue } from '../../app/custody/canonical-json.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { sealedBundle } from '../schema/index.ts';

export type NewSealedBundle = {
  /** SHA-256 of the zip. */
  readonly id: string;
  readonly name: string; readonly verdict: SealedBundleView['verdict']; readonly fingerprint: string; readonly checkedHow: string;
  readonly summary: BundleSummary; readonly zip: Uint8Array;
};

export type SealedBundlesStore = {
  /** Newest first, without their bytes. */
  list(): Promise<SealedBundleView[]>;
  get(id: string): Promise<SealedBundleView | null>;
  /** The zip as it came. */
  zip(id: string): Promise<Uint8Array | null>;
  /** Keeps it as it came; a conflict where the same bytes are kept already. */
  keep(change: Change & { readonly personId: string }, bundle: NewSealedBundle): Promise<Result<SealedBundleView, Failure>>;
};

type Row = { id: string; name: string; verdict: SealedBundleView['verdict']; fingerprint: string; checkedHow: string; summary: string; size: number; takenAt: string; takenBy: string };
const SELECT = `SELECT b.id, b.name, b.verdict, b.fingerprint, b.checked_how AS checkedHow, b.summary, b.size, b.taken_at AS takenAt, p.name AS takenBy
  FROM sealed_bundle b JOIN person p ON p.id = b.taken_by`;

const viewOf = ({ summary, ...row }: Row): SealedBundleView => ({ ...row, summary: bundleSummary.parse(JSON.parse(summary)) });

function byId(db: ReadDb | WriteTx, id: string): SealedBundleView | null {
  const row = db.get<Row>(`${SELECT} WHERE b.id = @id`, { id });
  return row === undefined ? null : viewOf(row);
}

export function createSealedBundlesStore(handle: StoreHandle): SealedBundlesStore {
  return {
    async list() { return handle.read.all<Row>(`${SELECT} ORDER BY b.taken_at DESC, b.rowid DESC`, {}).map(viewOf); },
    async get(id) { return byId(handle.read, id); },
    async zip(id) {
      const row = handle.read.get<{ zip: Buffer }>('SELECT zip FROM sealed_bundle WHERE id = @id', { id });
      return row === undefined ? null : new Uint8Array(row.zip);
    },
    keep: (change, { id, name, verdict, fingerprint, checkedHow, summary, zip }) => handle.transactResult<SealedBundleView, Failure>((tx) => {
      const before = byId(tx, id);
      if (before !== null) return err({ code: 'conflict', message: `This very bundle was taken in already, on ${before.takenAt.slice(0, 10)} by ${before.takenBy}.`, next: 'Nothing needs to be done.' });
      tx.orm.insert(sealedBundle).values({
        id, name, laboratory: summary.laboratory, verdict, fingerprint, checkedHow, summary: canonicalJson(summary as unknown as JsonValue),
        size: zip.byteLength, zip: Buffer.from(zip), takenAt: change.at, takenBy: change.personId,
      }).run();
      appendAudit(tx, change, { subject: id, caseId: null, content: { name, laboratory: summary.laboratory, verdict, fingerprint, checkedHow, cases: summary.cases.length } });
      return ok(byId(tx, id)!);
    }),
  };
}
