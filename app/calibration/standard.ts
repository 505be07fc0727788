/** Units in which a scale can be calibrated; nm is wavelength in air. */
export const SCALE_UNITS = ['nm', 'cm-1', 'raman-shift'] as const;
export type ScaleUnit = (typeof SCALE_UNITS)[number];

/** As written behind a number. */
export const UNIT_WORDS: Readonly<Record<ScaleUnit, string>> = { nm: 'nm', 'cm-1': 'cm⁻¹', 'raman-shift': 'cm⁻¹' };

export type ReferenceLine = {
  /** nm in air, cm-1 or Raman shift in cm-1, as the standard's unit says. */
  readonly position: number;
  /** Standard uncertainty of that position, same unit. */
  readonly uncertainty: number;
  /** Rough strength beside the others of the same source; guides the assignment, decides nothing. */
  readonly strength: number;
};

/** A lamp, film, solution or powder whose lines are known. */
export type CalibrationStandard = {
  readonly id: string;
  readonly name: string;
  readonly unit: ScaleUnit;
  /** 'emission': lines stand up; 'absorption': they take light away. */
  readonly shape: 'emission' | 'absorption';
  readonly lines: readonly ReferenceLine[];
  readonly source: string;
  /** True where the positions were not read in their source: the values of the certificate at hand belong in their place. */
  readonly fromMemory: boolean;
};
