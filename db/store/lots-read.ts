import { lotContent, type LotRecord } from '../../app/lots/lot-record.ts';
import type { ReadDb, WriteTx } from '../handle.ts';

export type LotItem = {
  readonly itemId: string; readonly caseId: string; readonly label: string; readonly kind: string; readonly declared: string; readonly condition: string;
  readonly grossWeight: number | null; readonly weightUnit: string; readonly count: number | null;
  readonly caseNumber: string; readonly caseState: string; readonly clientName: string;
};

/** The item that a lot is, with its case; null where there is none. */
export function lotItem(db: ReadDb | WriteTx, itemId: string): LotItem | null {
  return db.get<LotItem>(`
    SELECT i.id AS itemId, i.case_id AS caseId, i.label, i.kind, i.declared, i.condition, i.gross_weight AS grossWeight, i.weight_unit AS weightUnit, i.count,
           n.number AS caseNumber, n.state AS caseState, k.name AS clientName
    FROM item i JOIN case_record n ON n.id = i.case_id JOIN client k ON k.id = n.client_id WHERE i.id = ?`, [itemId]) ?? null;
}

type Row = { ordinal: number; at: string; by: string; content: string };

/** The book of a lot, oldest first. */
export function lotBook(db: ReadDb | WriteTx, itemId: string): LotRecord[] {
  return db.all<Row>('SELECT r.ordinal, r.at, p.name AS by, r.content FROM lot_record r JOIN person p ON p.id = r.person_id WHERE r.item_id = ? ORDER BY r.ordinal', [itemId])
    .map((row) => ({ ordinal: row.ordinal, at: row.at, by: row.by, content: lotContent.parse(JSON.parse(row.content)) }));
}
