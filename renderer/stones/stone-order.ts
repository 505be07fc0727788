import type { CaseView, StoneSummary } from '../../app/contract/cases.ts';

/** The stones of a case in the order of its parcels, items and labels. */
export const stonesInOrder = (of: Pick<CaseView, 'parcels'>): StoneSummary[] => of.parcels.flatMap((parcel) => parcel.items.flatMap((item) => item.stones));

/** The stone before (-1) or after (+1); null at the ends. */
export function neighbour(of: Pick<CaseView, 'parcels'>, stoneId: string, by: 1 | -1): StoneSummary | null {
  const all = stonesInOrder(of);
  const at = all.findIndex((stone) => stone.id === stoneId);
  return at < 0 ? null : all[at + by] ?? null;
}
