import { ABSORPTION_STANDARDS } from './absorption-standards.ts';
import { LAMPS } from './lamps.ts';
import { RAMAN_STANDARDS } from './raman-standards.ts';
import type { CalibrationStandard } from './standard.ts';

/** Everything a scale can be calibrated with. */
export const CALIBRATION_STANDARDS: readonly CalibrationStandard[] = [...LAMPS, ...ABSORPTION_STANDARDS, ...RAMAN_STANDARDS];

export const calibrationStandard = (id: string): CalibrationStandard | undefined => CALIBRATION_STANDARDS.find((standard) => standard.id === id);

/** The same standard with the positions of a certificate in place of the tabulated ones; all lines count alike. */
export function withOwnLines(standard: CalibrationStandard, own: readonly { readonly position: number; readonly uncertainty: number }[]): CalibrationStandard {
  return {
    ...standard, fromMemory: false, source: 'stated by the person who calibrated',
    lines: own.map((line) => ({ ...line, strength: 1 })).sort((a, b) => a.position - b.position),
  };
}
