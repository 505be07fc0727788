import type { CaseView, ItemView, StoneSummary } from '../contract/cases.ts';

/** Concluded by somebody, and not told to whoever is to state their own conclusion first. */
export const SHOWN_LATER = 'concluded; shown after you have stated yours';

/** Stones whose conclusion is not shown to the person who asks. */
export type Withheld = ReadonlySet<string>;

/** A stone without its conclusion where that is withheld: that it is concluded stays, what it says does not. */
export const withholdStone = <S extends Pick<StoneSummary, 'id' | 'conclusion'>>(stone: S, withheld: Withheld): S => (withheld.has(stone.id) ? { ...stone, conclusion: null } : stone);

export const withholdItem = (item: ItemView, withheld: Withheld): ItemView => ({ ...item, stones: item.stones.map((stone) => withholdStone(stone, withheld)) });

export const withholdCase = (view: CaseView, withheld: Withheld): CaseView => (withheld.size === 0 ? view
  : { ...view, parcels: view.parcels.map((parcel) => ({ ...parcel, items: parcel.items.map((item) => withholdItem(item, withheld)) })) });

/** Only what is concluded and unanswered can be withheld: all others need not be asked after. */
export const mayBeWithheld = (stones: readonly Pick<StoneSummary, 'id' | 'stage'>[]): string[] => stones.filter(({ stage }) => stage === 'concluded').map(({ id }) => id);

export const stonesOf = ({ parcels }: CaseView): StoneSummary[] => parcels.flatMap((parcel) => parcel.items).flatMap((item) => item.stones);
