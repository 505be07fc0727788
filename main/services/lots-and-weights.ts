import type { CaseView } from '../../app/contract/cases.ts';
import type { PieceWeights } from '../../app/contract/lots.ts';
import { foldResults } from '../../app/lots/fold-results.ts';
import type { LotRecord } from '../../app/lots/lot-record.ts';
import type { SourceLot } from '../../app/report/content/lot-part.ts';
import { lotViewOf } from './lot-view.ts';
import { pieceWeightsOf } from './weights.ts';
import type { Work } from './work-context.ts';

export type LotsAndWeights = {
  /** Each lot as it stands, and its whole book, oldest first. */
  readonly lots: readonly (SourceLot & { readonly book: readonly LotRecord[] })[];
  readonly weights: readonly { readonly itemId: string; readonly weights: PieceWeights }[];
};

/** Lots with their results, and pieces with estimated weights, in the order of a case's items. */
export async function lotsAndWeights({ parcels }: CaseView, { stores, casebook }: Work): Promise<LotsAndWeights> {
  const lots = [];
  const weights = [];
  for (const item of parcels.flatMap((parcel) => parcel.items)) {
    const lot = item.kind === 'lot' ? await stores.lots.get(item.id) : null;
    if (lot !== null) lots.push({ lot: lotViewOf(casebook.handle.read, lot), results: foldResults(lot.book), book: lot.book });
    const kept = item.kind === 'jewellery' ? await stores.weights.ofItem(item.id) : null;
    if (kept !== null) weights.push({ itemId: item.id, weights: pieceWeightsOf(kept) });
  }
  return { lots, weights };
}
