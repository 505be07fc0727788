/** Units an abscissa can have. 'nm' and 'angstrom' are wavelengths in air; 'pixel' and 'unstated' cannot be analysed. */
export const X_UNITS = ['nm', 'nm-vacuum', 'angstrom', 'cm-1', 'ev', 'raman-shift', 'pixel', 'other', 'unstated'] as const;
export type XUnit = (typeof X_UNITS)[number];
/** The abscissae that a person may state for a file that does not say. */
export const STATABLE_X_UNITS = ['nm', 'nm-vacuum', 'angstrom', 'cm-1', 'ev', 'raman-shift'] as const;
export type StatableXUnit = (typeof STATABLE_X_UNITS)[number];

/** Each abscissa as a sentence names it. */
export const UNIT_NAMES: Readonly<Record<XUnit, string>> = {
  nm: 'nm', 'nm-vacuum': 'nm in vacuum', angstrom: 'ångström', 'cm-1': 'cm⁻¹', ev: 'eV', 'raman-shift': 'Raman shift', pixel: 'pixel numbers', other: 'a unit that is not known here', unstated: 'no unit',
};

export const Y_UNITS = ['counts', 'absorbance', 'transmittance', 'percent-transmittance', 'reflectance', 'percent-reflectance', 'absorption-coefficient', 'arbitrary', 'other', 'unstated'] as const;
export type YUnit = (typeof Y_UNITS)[number];

/** One curve. x and y have the same length; x in the file's own order; y after the file's factors. */
export type Spectrum = {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly xUnit: XUnit;
  readonly yUnit: YUnit;
};
