import { UNIT_NAMES } from '../../app/spectra/spectrum.ts';
import type { ReadOptions, ReadWarning, SpectrumBlock } from '../../app/files/spectrum-file.ts';

/** Says that a stated unit was not used, because the file itself names another. */
export function unusedUnit(blocks: readonly SpectrumBlock[], { xUnit }: ReadOptions): ReadWarning[] {
  const other = xUnit === undefined ? undefined : blocks.find((block) => block.xUnit !== xUnit);
  return other === undefined ? [] : [{ code: 'unit-not-used', message: `The file itself says the axis is in ${UNIT_NAMES[other.xUnit]}; the stated ${UNIT_NAMES[xUnit!]} was not used.` }];
}
