import type { CaseView, ItemView, PhotographView, StoneSummary } from '../../app/contract/cases.ts';
import type { CurrentCustody } from '../../app/custody/current-custody.ts';
import { asc, eq } from 'drizzle-orm';
import type { ReadDb, WriteTx } from '../handle.ts';
import { caseRecord, item as itemTable, parcel as parcelTable } from '../schema/index.ts';
import { clientById } from './clients.ts';
import { custodyOfCase } from './custody-now.ts';
import { personById } from './people.ts';
import { photographsOfCase } from './photographs.ts';
import { stoneSummariesOfCase } from './stone-summaries.ts';

type ItemRow = typeof itemTable.$inferSelect;

function custodyPart(custody: CurrentCustody | undefined, receivedAt: string): ItemView['custody'] {
  if (!custody) return { place: '', holder: '', seal: '', lastEvent: 'received', at: receivedAt, differs: false, out: null };
  const { place, holder, seal, lastEvent, at, differs, out } = custody;
  return { place, holder, seal, lastEvent, at, differs, out };
}

function itemView(row: ItemRow, custody: ItemView['custody'], stones: StoneSummary[], photographs: PhotographView[]): ItemView {
  return {
    id: row.id, label: row.label, kind: row.kind as ItemView['kind'], declared: row.declared, declaredValue: row.declaredValue, grossWeight: row.grossWeight,
    weightUnit: row.weightUnit === 'g' ? 'g' : 'ct', count: row.count, setting: row.setting as ItemView['setting'], condition: row.condition,
    custody, stones, photographs,
  };
}

function itemsOfCase(db: ReadDb | WriteTx, caseId: string, receivedAt: string, photographs: readonly PhotographView[]): (ItemView & { parcelId: string })[] {
  const rows = db.orm.select().from(itemTable).where(eq(itemTable.caseId, caseId)).orderBy(asc(itemTable.label)).all();
  // Z comes before AA.
  rows.sort((a, b) => a.label.length - b.label.length || (a.label < b.label ? -1 : 1));
  const custody = custodyOfCase(db, caseId);
  const stones = stoneSummariesOfCase(db, caseId);
  return rows.map((row) => ({
    ...itemView(row, custodyPart(custody.get(row.id), receivedAt), stones.filter((s) => s.itemId === row.id), photographs.filter((p) => p.itemId === row.id)),
    parcelId: row.parcelId,
  }));
}

/** A case with everything it holds, or null. */
export function caseView(db: ReadDb | WriteTx, caseId: string): CaseView | null {
  const row = db.orm.select().from(caseRecord).where(eq(caseRecord.id, caseId)).get();
  if (!row) return null;
  const photographs = photographsOfCase(db, caseId);
  const items = itemsOfCase(db, caseId, row.receivedAt, photographs);
  const parcels = db.orm.select().from(parcelTable).where(eq(parcelTable.caseId, caseId)).orderBy(asc(parcelTable.ordinal)).all();
  return {
    id: row.id, number: row.number, client: clientById(db, row.clientId)!, receivedAt: row.receivedAt, dueOn: row.dueOn, asks: row.asks, remarks: row.remarks,
    state: row.state as CaseView['state'], createdBy: personById(db, row.createdBy)?.name ?? '',
    parcels: parcels.map(({ id, ordinal, sealNumber, remarks }) => ({
      id, ordinal, sealNumber, remarks, items: items.filter((item) => item.parcelId === id).map(({ parcelId: _parcelId, ...item }) => item),
    })),
    photographs: photographs.filter((p) => p.itemId === null && p.stoneId === null),
  };
}
