import { z } from 'zod';
import { BALANCE_COVERS, balanceUncertainty, weightDigits, type BalanceUncertainty } from '../report/content/weight-text.ts';

/** A decimal number as text, as ECMAScript writes it: never bent by a reader's own numbers. */
export const decimal = z.string().regex(/^-?\d+(\.\d+)?(e[+-]?\d+)?$/);

/** A measured value. Members: value and uncertainty as decimal text, unit as it is printed. */
export const quantity = z.object({
  value: decimal.describe('decimal number as text'),
  unit: z.string().describe('as printed: ct, g, nm, cm-1, ppm …; “1” for a ratio'),
  uncertainty: decimal.nullable().describe('in the same unit; null where none was stated'),
  covers: z.string().describe('what the uncertainty covers, in words; empty without one'),
});
export type Quantity = z.infer<typeof quantity>;

/** Text of a number; throws on what is no number, which only a fault brings here. */
export function decimalText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError('decimalText: not a finite number');
  return String(Object.is(value, -0) ? 0 : value);
}

/** A weight from a balance, in steps of its unit; `read` is the unit that the balance showed. */
export function weighed(steps: number, unit: 'ct' | 'g', settings: BalanceUncertainty, read: 'ct' | 'g' = unit): Quantity {
  const uncertainty = balanceUncertainty(unit, settings, read);
  return { value: weightDigits(steps, unit), unit, uncertainty: uncertainty === null ? null : weightDigits(uncertainty, unit), covers: uncertainty === null ? '' : BALANCE_COVERS };
}

/** A quantity without a stated uncertainty, or with one and what it covers. */
export function quantityOf(value: number | string, unit: string, uncertainty: number | null = null, covers = ''): Quantity {
  return {
    value: typeof value === 'string' ? value : decimalText(value), unit,
    uncertainty: uncertainty === null ? null : decimalText(uncertainty), covers: uncertainty === null ? '' : covers,
  };
}
