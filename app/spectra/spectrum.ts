/** Units an abscissa can have. 'nm' is wavelength in air unless the run says vacuum; 'pixel' and 'unstated' cannot be analysed. */
export const X_UNITS = ['nm', 'angstrom', 'cm-1', 'ev', 'raman-shift', 'pixel', 'other', 'unstated'] as const;
export type XUnit = (typeof X_UNITS)[number];
/** The abscissae that a person may state for a file that does not say. */
export const STATABLE_X_UNITS = ['nm', 'angstrom', 'cm-1', 'ev', 'raman-shift'] as const;
export type StatableXUnit = (typeof STATABLE_X_UNITS)[number];

export const Y_UNITS = ['counts', 'absorbance', 'transmittance', 'percent-transmittance', 'reflectance', 'percent-reflectance', 'absorption-coefficient', 'arbitrary', 'other', 'unstated'] as const;
export type YUnit = (typeof Y_UNITS)[number];

/** One curve. x and y have the same length; x in the file's own order; y after the file's factors. */
export type Spectrum = {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly xUnit: XUnit;
  readonly yUnit: YUnit;
};
