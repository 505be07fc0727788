import type { CustodyDocument } from '../../app/bundle/case-document.ts';
import type { LaboratoryView } from '../../app/contract/casebook.ts';
import type { CaseView, ItemView, StoneSummary } from '../../app/contract/cases.ts';
import type { CustodyView } from '../../app/contract/custody.ts';
import type { ConclusionView, FindingView, RunView } from '../../app/contract/work.ts';
import { custodyContent } from '../../app/domain/custody-event.ts';
import type { Proposal } from '../../app/evidence/proposal.ts';
import type { ListedRecord } from '../../app/report-document/choose-attached.ts';
import type { ReadDb, StoreHandle } from '../handle.ts';
import { caseView } from './case-view.ts';
import { conclusionsOfStone } from './conclusions-read.ts';
import { listCustody } from './custody.ts';
import { theLaboratory } from './laboratory.ts';
import { evidenceOfStone } from './stone-folder.ts';

export type StoneRecords = {
  readonly stone: StoneSummary; readonly item: ItemView; readonly runs: RunView[]; readonly findings: FindingView[];
  readonly conclusions: ConclusionView[]; readonly proposal: Proposal;
  /** Set where the conclusions were left out because they are withheld from the person who asks. */
  readonly withheld?: boolean;
};

/** Everything that is recorded of a case, as it stands. */
export type CaseRecords = {
  readonly laboratory: LaboratoryView; readonly case: CaseView; readonly stones: readonly StoneRecords[];
  /** In the ledger's order. */
  readonly custody: readonly CustodyView[];
};

/** All entries, however long the ledger. */
const ALL = Number.MAX_SAFE_INTEGER;

function stoneRecords(handle: StoreHandle, item: ItemView, stone: StoneSummary, at: string): StoneRecords {
  const evidence = evidenceOfStone(handle.read, stone.id, at);
  if (evidence === null) throw new Error(`stone ${stone.id} is in its case and not in the casebook`);
  return { stone, item, ...evidence, conclusions: conclusionsOfStone(handle.read, stone.id) };
}

/** Null where there is no such case. `at` (UTC ISO 8601) says which instruments are in use. */
export async function caseRecords(handle: StoreHandle, caseId: string, at: string): Promise<CaseRecords | null> {
  const view = caseView(handle.read, caseId);
  if (view === null) return null;
  const stones = view.parcels.flatMap((parcel) => parcel.items).flatMap((item) => item.stones.map((stone) => stoneRecords(handle, item, stone, at)));
  const { rows } = listCustody(handle.read, { caseId, itemId: null, limit: ALL, offset: 0 });
  return { laboratory: theLaboratory(handle.read), case: view, stones, custody: rows.reverse() };
}

/** The custody entries of a case as they were hashed, in the ledger's order. */
export function custodyStatements(db: ReadDb, caseId: string): CustodyDocument['entries'] {
  type Row = { seq: number; at: string; case_id: string; item_id: string; person_id: string; content: string; previous: string; hash: string; person: string; label: string };
  const rows = db.all<Row>(`
    SELECT e.seq, e.at, e.case_id, e.item_id, e.person_id, e.content, e.previous, e.hash, p.name AS person, i.label
    FROM custody_entry e JOIN person p ON p.id = e.person_id JOIN item i ON i.id = e.item_id WHERE e.case_id = @caseId ORDER BY e.seq`, { caseId });
  return rows.map((row) => ({
    statement: { seq: row.seq, at: row.at, person: row.person_id, case: row.case_id, item: row.item_id, content: custodyContent.parse(JSON.parse(row.content)), previous: row.previous },
    hash: row.hash, personName: row.person, itemLabel: row.label,
  }));
}

/** Every raw record of a case, without its bytes, with the numbers of the runs it belongs to; none for a photograph. */
export function rawRecordsOfCase(db: ReadDb, caseId: string): ListedRecord[] {
  type Row = { id: string; name: string; media_type: string; size: number; sha256: string; runs: string | null };
  const rows = db.all<Row>(`
    SELECT w.id, w.name, w.media_type, w.size, w.sha256,
           (SELECT json_group_array(number) FROM (SELECT DISTINCT r.number FROM run_file f JOIN test_run r ON r.id = f.run_id WHERE f.raw_record_id = w.id ORDER BY r.number)) AS runs
    FROM raw_record w WHERE w.case_id = @caseId ORDER BY w.rowid`, { caseId });
  return rows.map(({ media_type: mediaType, runs, ...row }) => ({ ...row, mediaType, runs: (JSON.parse(runs ?? '[]') as number[]).map((number) => `R${number}`) }));
}
