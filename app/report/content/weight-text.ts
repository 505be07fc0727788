import type { HouseSettings } from '../../domain/house-settings.ts';
import { formatCarat, formatGram, gramsToCarats, gramUnits } from '../../domain/weight.ts';

export type BalanceUncertainty = Pick<HouseSettings, 'balanceUncertaintyCarat' | 'balanceUncertaintyGram'>;

/** 0.0001 ct is 0.00002 g. */
const GRAM_STEPS_A_CARAT_STEP = 2;

/** What the uncertainty of a weighed weight covers, in the words of the report's data. */
export const BALANCE_COVERS = 'one standard deviation: the balance, as the laboratory states it';

/** Digits of a weight in steps of its unit, without the unit; at least two decimals unless said otherwise. */
export const weightDigits = (steps: number, unit: 'ct' | 'g', atLeast?: number): string => (unit === 'ct' ? formatCarat(steps, atLeast) : formatGram(steps, atLeast));

/**
 * Standard uncertainty of a weight in steps of its unit (0.0001 ct, 0.00001 g); null where the laboratory states none.
 * `read` is the unit that the balance showed: a lot weighed in grams is told in carats, and its balance is the one for grams.
 */
export function balanceUncertainty(unit: 'ct' | 'g', settings: BalanceUncertainty, read: 'ct' | 'g' = unit): number | null {
  const steps = read === 'ct' ? settings.balanceUncertaintyCarat : settings.balanceUncertaintyGram;
  if (steps === 0) return null;
  if (read === unit) return steps;
  return read === 'g' ? gramsToCarats(gramUnits(steps)) : steps * GRAM_STEPS_A_CARAT_STEP;
}

/** "0.412 ct", "5.31 g" from integer steps of the unit. */
export const weightText = (steps: number, unit: 'ct' | 'g'): string => `${weightDigits(steps, unit)} ${unit}`;

/** "0.4120 ± 0.0015 ct": a weight with the standard uncertainty of the house's balance, where one is stated, both to the same decimal (GUM 7.2.6). */
export function weighedText(steps: number, unit: 'ct' | 'g', settings: BalanceUncertainty, read: 'ct' | 'g' = unit): string {
  const uncertainty = balanceUncertainty(unit, settings, read);
  if (uncertainty === null) return weightText(steps, unit);
  const after = weightDigits(uncertainty, unit);
  return `${weightDigits(steps, unit, after.length - after.indexOf('.') - 1)} ± ${after} ${unit}`;
}
