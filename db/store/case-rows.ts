import type { CaseRow } from '../../app/contract/cases.ts';
import { caseNext, caseSummary } from '../../app/custody/case-words.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { METHOD_WORDS } from '../../app/evidence/sentences.ts';
import { DEFAULT_PROTOCOLS } from '../../app/protocol/default-protocols.ts';
import type { Protocol } from '../../app/protocol/protocol.ts';
import { protocolStateOf, type ProtocolStone } from '../../app/protocol/protocol-state.ts';
import type { ReadDb } from '../handle.ts';
import { readLaboratory } from './laboratory.ts';

/** The base of a row, which the caller's query selects and sorts: `SELECT ${CASE_ROW_COLUMNS} FROM ${CASE_ROW_FROM} …`. */
export const CASE_ROW_COLUMNS = `n.id, n.number, k.name AS client_name, n.asks, n.received_at, n.due_on, n.state`;
export const CASE_ROW_FROM = `case_record n JOIN client k ON k.id = n.client_id`;

export type CaseBase = { id: string; number: string; client_name: string; asks: string; received_at: string; due_on: string | null; state: string };

type Holdings = { case_id: string; parcels: number; items: number; loose: number; jewellery: number; lots: number; lot_count: number; declared: string; remark: string };
type Progress = {
  case_id: string; stones: number; tested: number; concluded: number; confirmed: number; disagreed: number; unconfirmed_label: string | null; disputed_label: string | null;
};
type NextStone = { case_id: string; label: string; mounted: number; colour_class: string; weight: number | null; kind: string; setting: string | null; methods: string };
type Place = { case_id: string; place: string | null };

const OF_THESE = '(SELECT value FROM json_each(@ids))';

// With a bare column beside min(), SQLite takes it from the row of the minimum: the first item's declaration.
const HOLDINGS = `SELECT i.case_id, count(DISTINCT i.parcel_id) AS parcels, count(*) AS items, sum(i.kind = 'loose') AS loose, sum(i.kind = 'jewellery') AS jewellery,
  sum(i.kind = 'lot') AS lots, coalesce(sum(i.count), 0) AS lot_count, i.declared, (SELECT p.remarks FROM parcel p WHERE p.id = i.parcel_id) AS remark, min(i.rowid)
  FROM item i WHERE i.case_id IN ${OF_THESE} GROUP BY i.case_id`;

const PROGRESS = `SELECT s.case_id, count(*) AS stones,
  sum(EXISTS (SELECT 1 FROM test_run r WHERE r.stone_id = s.id)) AS tested,
  count(c.id) AS concluded, sum(coalesce(f.agrees, 0) = 1) AS confirmed, sum(f.agrees IS 0) AS disagreed,
  min(CASE WHEN c.id IS NOT NULL AND f.id IS NULL THEN s.label END) AS unconfirmed_label,
  min(CASE WHEN f.agrees IS 0 THEN s.label END) AS disputed_label
  FROM stone s
  LEFT JOIN conclusion c ON c.stone_id = s.id AND c.ordinal = (SELECT max(ordinal) FROM conclusion k WHERE k.stone_id = s.id)
  LEFT JOIN confirmation f ON f.conclusion_id = c.id
  WHERE s.case_id IN ${OF_THESE} GROUP BY s.case_id`;

const PLACES = `SELECT n.value AS case_id, (
    SELECT json_extract(e.content, '$.place') FROM custody_entry e
    WHERE e.case_id = n.value AND json_extract(e.content, '$.place') IS NOT NULL ORDER BY e.seq DESC LIMIT 1) AS place
  FROM json_each(@ids) n`;

// The first stone of a case that has no conclusion, with the methods it had a run of: what its protocol asks for next.
const NEXT_STONE = `SELECT s.case_id, s.label, s.mounted, s.colour_class, s.weight, i.kind, i.setting, min(s.rowid),
  (SELECT json_group_array(r.method) FROM test_run r WHERE r.stone_id = s.id) AS methods
  FROM stone s JOIN item i ON i.id = s.item_id
  WHERE s.case_id IN ${OF_THESE} AND NOT EXISTS (SELECT 1 FROM conclusion c WHERE c.stone_id = s.id) GROUP BY s.case_id`;

const NO_HOLDINGS: Omit<Holdings, 'case_id'> = { parcels: 0, items: 0, loose: 0, jewellery: 0, lots: 0, lot_count: 0, declared: '', remark: '' };
const NO_PROGRESS: Omit<Progress, 'case_id'> = { stones: 0, tested: 0, concluded: 0, confirmed: 0, disagreed: 0, unconfirmed_label: null, disputed_label: null };

function byCase<Row extends { case_id: string }>(db: ReadDb, sql: string, ids: string): Map<string, Row> {
  return new Map(db.all<Row>(sql, { ids }).map((row) => [row.case_id, row]));
}

/** "A-1 infrared": what the house's protocol asks for next on this stone, or null where nothing is left. */
function nextTest(stone: NextStone | undefined, protocols: readonly Protocol[]): string | null {
  if (stone === undefined) return null;
  const { next } = protocolStateOf(protocols, {
    mounted: stone.mounted === 1, setting: stone.setting as ProtocolStone['setting'], colourClass: stone.colour_class as ProtocolStone['colourClass'], kind: stone.kind as ProtocolStone['kind'],
    weightCt: stone.weight === null ? null : stone.weight / 10_000,
  }, new Set(JSON.parse(stone.methods) as MethodId[]));
  return next === null ? null : `${stone.label} ${METHOD_WORDS[next]}`;
}

function rowOf(base: CaseBase, h: Omit<Holdings, 'case_id'>, p: Omit<Progress, 'case_id'>, place: string, test: string | null): CaseRow {
  const state = base.state as CaseRow['state'];
  return {
    id: base.id, number: base.number, clientName: base.client_name, asks: base.asks, receivedAt: base.received_at, dueOn: base.due_on, state,
    stones: p.stones, concluded: p.concluded, confirmed: p.confirmed, place,
    summary: caseSummary({ parcelRemark: h.remark, declared: h.declared, parcels: h.parcels, items: h.items, loose: h.loose, jewellery: h.jewellery, lots: h.lots, lotCount: h.lot_count }),
    next: caseNext({
      state, stones: p.stones, tested: p.tested, concluded: p.concluded, confirmed: p.confirmed, disagreed: p.disagreed,
      unconfirmedLabel: p.unconfirmed_label, disputedLabel: p.disputed_label, nextTest: test,
    }),
  };
}

/** Completes rows for a list: what a case holds, how far it has come, where it lies. Four grouped queries, however many rows. */
export function completeCaseRows(db: ReadDb, bases: readonly CaseBase[]): CaseRow[] {
  if (bases.length === 0) return [];
  const ids = JSON.stringify(bases.map((base) => base.id));
  const holdings = byCase<Holdings>(db, HOLDINGS, ids);
  const progress = byCase<Progress>(db, PROGRESS, ids);
  // What was returned lies nowhere in the house.
  const places = byCase<Place>(db, PLACES, JSON.stringify(bases.filter((base) => base.state !== 'returned').map((base) => base.id)));
  const open = bases.filter((base) => base.state === 'open').map((base) => base.id);
  const stones = byCase<NextStone>(db, NEXT_STONE, JSON.stringify(open));
  const protocols = readLaboratory(db)?.settings.protocols ?? DEFAULT_PROTOCOLS;
  return bases.map((base) => rowOf(base, holdings.get(base.id) ?? NO_HOLDINGS, progress.get(base.id) ?? NO_PROGRESS, places.get(base.id)?.place ?? '', nextTest(stones.get(base.id), protocols)));
}
