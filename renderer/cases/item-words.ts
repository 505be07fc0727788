import type { ItemView } from '../../app/contract/cases.ts';
import { formatCarat, formatGram } from '../../app/domain/weight.ts';

/** "A loose", "B jewellery, open back", "C lot" */
export function itemHeading(i: ItemView): string {
  const setting = i.setting === 'open-back' ? ', open back' : i.setting === 'closed-back' ? ', closed back' : '';
  return `${i.label} ${i.kind}${setting}`;
}

/** "1.0234 ct" in the unit it was weighed in. */
export const itemWeight = (i: Pick<ItemView, 'grossWeight' | 'weightUnit'>): string =>
  (i.grossWeight === null ? 'not weighed' : i.weightUnit === 'ct' ? `${formatCarat(i.grossWeight)} ct` : `${formatGram(i.grossWeight)} g`);
