import type { XUnit, YUnit } from '../spectra/spectrum.ts';
import { PERCENT_ABOVE } from './reader-defaults.ts';
import type { ReadOptions, ReadWarning } from './spectrum-file.ts';
import { percentUnit, xUnitFromWords, yUnitFromWords } from './unit-words.ts';

export type Units = { readonly xUnit: XUnit; readonly yUnit: YUnit; readonly yWords: string; readonly warnings: readonly ReadWarning[] };

/** The file's own words about the axes. */
export type AxisWords = {
  readonly x: string;
  readonly y: string;
  /** Said elsewhere in the header, used where `y` names no unit. */
  readonly yElsewhere?: string;
  /** The file calls itself a Raman spectrum, whose 1/CM are shifts. */
  readonly raman: boolean;
  /** The words are names of columns, which need not name a unit. */
  readonly names?: boolean;
};

/** Words that name a quantity or nothing at all, but no unit. */
const NO_UNIT = /^(?:wave\s*length|lambda|\u03bb|energy|position|frequency|arbitrary(?: units)?|unknown|none|null|n\/a|x|y|\W*)$/i;

function xUnitOf(words: AxisWords): XUnit {
  const unit = xUnitFromWords(words.x);
  if (unit === 'cm-1' && words.raman) return 'raman-shift';
  if (unit) return unit;
  return words.names || NO_UNIT.test(words.x.trim()) ? 'unstated' : 'other';
}

function yUnitOf(words: AxisWords): { unit: YUnit; said: string } {
  const unit = yUnitFromWords(words.y);
  const elsewhere = unit === undefined && words.yElsewhere ? yUnitFromWords(words.yElsewhere) : undefined;
  if (elsewhere) return { unit: elsewhere, said: words.yElsewhere! };
  return { unit: unit ?? (words.names || NO_UNIT.test(words.y.trim()) ? 'unstated' : 'other'), said: words.y };
}

/**
 * The units of a curve from the file's own words, and where these say none from what the user stated.
 * Warnings: 'unit-not-stated', 'y-unit-not-stated', 'percent-values'.
 */
export function resolveUnits(words: AxisWords, y: Float64Array, options: ReadOptions): Units {
  const warnings: ReadWarning[] = [];
  let xUnit = xUnitOf(words);
  const { unit, said } = yUnitOf(words);
  let yUnit = unit;
  // A file that says 1/CM says the unit, not whether wavenumbers or shifts are meant.
  if (xUnit === 'unstated' || (xUnit === 'cm-1' && options.xUnit === 'raman-shift')) xUnit = options.xUnit ?? 'unstated';
  if (xUnit === 'unstated') {
    warnings.push({ code: 'unit-not-stated', message: 'The file does not say the unit of its abscissa. State it once; the instrument remembers.' });
  }
  if (yUnit === 'unstated') yUnit = options.yUnit ?? 'unstated';
  if (yUnit === 'unstated') warnings.push({ code: 'y-unit-not-stated', message: 'The file does not say the unit of its ordinate.' });
  const inPercent = percentUnit(yUnit);
  if (inPercent !== yUnit) {
    const largest = y.reduce((m, v) => Math.max(m, v), -Infinity);
    if (largest > PERCENT_ABOVE) {
      warnings.push({ code: 'percent-values', message: `The file says ${said.trim() || yUnit}, but its values run to ${Number(largest.toPrecision(4))}; they were taken as per cent.` });
      yUnit = inPercent;
    }
  }
  return { xUnit, yUnit, yWords: said, warnings };
}
