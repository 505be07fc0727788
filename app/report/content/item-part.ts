import type { ItemView } from '../../contract/cases.ts';
import type { ItemsPart } from '../sections/items.ts';
import type { ReportSource } from './report-source.ts';
import { weighedText, type BalanceUncertainty } from './weight-text.ts';

type ItemPart = ItemsPart['items'][number];
type Fact = ItemPart['facts'][number];

export const KIND_WORDS: Readonly<Record<ItemView['kind'], string>> = { loose: 'loose stone', jewellery: 'jewellery', lot: 'lot of small stones' };

const fact = (label: string, value: string, mono = false): Fact[] => value.trim() === '' ? [] : [{ label, value, mono }];

/** What of an item was tested: its stones with folders, and of a lot the stones entered by number. */
function tested(item: ItemView, asLot: number): Fact[] {
  const labels = item.stones.map((stone) => stone.label).join(', ');
  if (asLot > 0) return [...fact('Tested as a lot', `${asLot} stone${asLot === 1 ? '' : 's'}, see “Lots of small stones”`), ...fact('Own folders', labels, true)];
  return labels === '' ? fact('Tested', 'no stone of this item was tested') : fact('Stones tested', labels, true);
}

function factsOf(item: ItemView, seal: string, asLot: number, settings: BalanceUncertainty): Fact[] {
  return [
    ...fact('Declared as', item.declared),
    ...fact('Declared value', item.declaredValue),
    ...(item.grossWeight === null ? fact('Gross weight', 'not weighed') : fact('Gross weight', weighedText(item.grossWeight, item.weightUnit, settings), true)),
    ...fact('Count', item.count === null ? '' : String(item.count), true),
    ...fact('Setting', item.setting === null ? '' : item.setting === 'open-back' ? 'open at the back' : 'closed at the back'),
    ...fact('Seal on receipt', seal, true),
    ...fact('Condition', item.condition),
    ...fact('Weights', item.custody.differs ? 'a weight in the custody log differs by more than the tolerance' : ''),
    ...tested(item, asLot),
  ];
}

/** Each item as received, with its pictures. */
export function itemParts(source: ReportSource): ItemPart[] {
  return source.case.parcels.flatMap((parcel) => parcel.items.map((item) => ({
    label: item.label, kind: KIND_WORDS[item.kind], facts: factsOf(item, parcel.sealNumber, source.lots?.find(({ lot }) => lot.itemId === item.id)?.results.length ?? 0, source.laboratory.settings),
    photographs: item.photographs.flatMap((photograph) => {
      const base64 = source.pictures.get(photograph.id);
      return base64 === undefined ? [] : [{ caption: photograph.caption, mediaType: photograph.mediaType, base64, sha256: photograph.sha256 }];
    }),
  })));
}
