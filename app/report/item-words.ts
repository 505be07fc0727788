import type { ItemView } from '../contract/cases.ts';
import { formatCarat, formatGram } from '../domain/weight.ts';
import { countWords } from './count-words.ts';

export const ITEM_KIND_WORDS: Readonly<Record<ItemView['kind'], string>> = { loose: 'loose stone', jewellery: 'jewellery', lot: 'lot of small stones' };

/** Number by which an item is called and which its QR code holds: case and letter. */
export const itemNumber = (caseNumber: string, label: string): string => `${caseNumber}/${label}`;

/** "0.412 ct", or an empty text where it was not weighed. */
export const weightWords = (weight: number | null, unit: 'ct' | 'g'): string =>
  weight === null ? '' : unit === 'ct' ? `${formatCarat(weight)} ct` : `${formatGram(weight)} g`;

/** How many stones, in words: as counted for a lot, as listed otherwise. */
export function stoneCountWords(item: Pick<ItemView, 'kind' | 'count' | 'stones'>): string {
  const count = item.count ?? item.stones.length;
  if (item.kind === 'loose') return count > 1 ? countWords(count, 'stone') : '';
  return count === 0 ? 'stones not counted' : countWords(count, 'stone');
}
