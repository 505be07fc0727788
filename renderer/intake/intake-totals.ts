import { parseCarat, parseGram } from '../../app/domain/weight.ts';
import type { IntakeForm } from './intake-state.ts';

export type IntakeTotals = { readonly items: number; readonly stones: number; readonly carat: number; readonly gram: number; readonly unweighed: number; /** Stones whose colour class nobody has stated. */ readonly colourOpen: number };

/** What will be taken in, as far as it can be read: stones of lots by their count; weights in 0.0001 ct and 0.00001 g. */
export function intakeTotals(form: IntakeForm): IntakeTotals {
  let items = 0, stones = 0, carat = 0, gram = 0, unweighed = 0, colourOpen = 0;
  for (const item of form.parcels.flatMap((p) => p.items)) {
    items += 1;
    colourOpen += item.stones.filter((s) => s.colourClass === 'unknown').length;
    const count = Number(item.count.trim());
    stones += item.kind === 'lot' ? (Number.isInteger(count) && count > 0 ? count : 0) : item.stones.length;
    const weight = item.weightUnit === 'ct' ? parseCarat(item.grossWeight) : parseGram(item.grossWeight);
    if (!weight.ok) unweighed += 1;
    else if (item.weightUnit === 'ct') carat += weight.value;
    else gram += weight.value;
  }
  return { items, stones, carat, gram, unweighed, colourOpen };
}
