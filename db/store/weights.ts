import type { Failure } from '../../app/contract/failure.ts';
import { ok, type Result } from '../../app/result.ts';
import { weightContent, type WeightContent } from '../../app/weights/weight-record.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { weightRecord } from '../schema/index.ts';
import { lotItem } from './lots-read.ts';
import { notFound, refused } from './refusals.ts';
import { closed } from './stones.ts';

type Signed = Change & { readonly personId: string };
type Kept<K extends WeightContent['kind']> = { readonly at: string; readonly by: string; readonly content: Extract<WeightContent, { kind: K }> };
export type KeptEstimate = Kept<'estimate'>;

/** What is known of the weights of a piece: the newest estimate of each stone, and what was declared for it. */
export type KeptWeights = { readonly stones: readonly { readonly stoneId: string; readonly label: string; readonly estimate: KeptEstimate | null }[]; readonly declared: Kept<'declared'> | null };

export type WeightsStore = {
  ofItem(itemId: string): Promise<KeptWeights | null>;
  estimate(change: Signed, stoneId: string, content: KeptEstimate['content']): Promise<Result<KeptEstimate, Failure>>;
  declare(change: Signed, itemId: string, content: Kept<'declared'>['content']): Promise<Result<KeptWeights, Failure>>;
};

type Row = { stone_id: string | null; at: string; by: string; content: string };

/** Null where there is no such item. */
export function weightsOfItem(db: ReadDb | WriteTx, itemId: string): KeptWeights | null {
  if (lotItem(db, itemId) === null) return null;
  const rows = db.all<Row>('SELECT w.stone_id, w.at, p.name AS by, w.content FROM weight_record w JOIN person p ON p.id = w.person_id WHERE w.item_id = ? ORDER BY w.rowid', [itemId])
    .map(({ stone_id: stoneId, at, by, content }) => ({ stoneId, at, by, content: weightContent.parse(JSON.parse(content)) }));
  const newest = (stoneId: string | null) => rows.findLast((row) => row.stoneId === stoneId);
  const stones = db.all<{ id: string; label: string }>('SELECT id, label FROM stone WHERE item_id = ? AND mounted = 1 ORDER BY ordinal', [itemId]);
  return {
    stones: stones.map(({ id, label }) => ({ stoneId: id, label, estimate: (newest(id) ?? null) as KeptEstimate | null })),
    declared: (newest(null) ?? null) as Kept<'declared'> | null,
  };
}

function put(tx: WriteTx, newId: () => string, change: Signed, of: { caseId: string; itemId: string; stoneId: string | null; label: string }, content: WeightContent): void {
  const { caseId, itemId, stoneId, label } = of;
  tx.orm.insert(weightRecord).values({ id: newId(), caseId, itemId, stoneId, content: JSON.stringify(content), at: change.at, personId: change.personId }).run();
  appendAudit(tx, change, { subject: stoneId ?? itemId, caseId, content: { weightOf: label, ...content } });
}

export function createWeightsStore(handle: StoreHandle, newId: () => string): WeightsStore {
  return {
    async ofItem(itemId) { return weightsOfItem(handle.read, itemId); },
    estimate: (change, stoneId, content) => handle.transactResult<KeptEstimate, Failure>((tx) => {
      const stone = tx.get<{ label: string; item_id: string; mounted: number }>('SELECT label, item_id, mounted FROM stone WHERE id = ?', [stoneId]);
      if (stone === undefined) return notFound('That stone');
      const item = lotItem(tx, stone.item_id)!;
      if (item.caseState === 'returned') return closed();
      if (stone.mounted === 0) return refused(`Stone ${stone.label} is loose.`, 'Weigh it: an estimate is for stones that a setting holds.');
      put(tx, newId, change, { caseId: item.caseId, itemId: item.itemId, stoneId, label: stone.label }, content);
      return ok(weightsOfItem(tx, item.itemId)!.stones.find((one) => one.stoneId === stoneId)!.estimate!);
    }),
    declare: (change, itemId, content) => handle.transactResult<KeptWeights, Failure>((tx) => {
      const item = lotItem(tx, itemId);
      if (item === null) return notFound('That item');
      if (item.caseState === 'returned') return closed();
      put(tx, newId, change, { caseId: item.caseId, itemId, stoneId: null, label: item.label }, content);
      return ok(weightsOfItem(tx, itemId)!);
    }),
  };
}
