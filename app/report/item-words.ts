import type { ItemView } from '../contract/cases.ts';
import { weightText } from './content/weight-text.ts';
import { countWords } from './count-words.ts';

/** Number by which an item is called and which its QR code holds: case and letter. */
export const itemNumber = (caseNumber: string, label: string): string => `${caseNumber}/${label}`;

/** "0.412 ct", or an empty text where it was not weighed. */
export const grossWeightWords = (item: Pick<ItemView, 'grossWeight' | 'weightUnit'>): string =>
  item.grossWeight === null ? '' : weightText(item.grossWeight, item.weightUnit);

/** How many stones, in words: as counted at the counter, else as listed. */
export function stoneCountWords(item: Pick<ItemView, 'kind' | 'count' | 'stones'>): string {
  const count = item.count ?? item.stones.length;
  if (count > 0) return countWords(count, 'stone');
  return item.kind === 'loose' ? 'one stone' : 'stones not counted';
}
