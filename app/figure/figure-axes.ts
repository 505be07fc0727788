import type { XUnit, YUnit } from '../spectra/spectrum.ts';
import { FIGURE_AXES, type FigureAxis } from './figure-model.ts';

/** Caption of each axis and the decimals a position is written with on it. */
export const AXIS_STYLE: Readonly<Record<FigureAxis, { readonly label: string; readonly unit: string; readonly decimals: number; readonly falling: boolean }>> = {
  nm: { label: 'wavelength in air, nm', unit: 'nm', decimals: 1, falling: false },
  'nm-vacuum': { label: 'wavelength in vacuum, nm', unit: 'nm', decimals: 1, falling: false },
  'cm-1': { label: 'wavenumber, cm⁻¹', unit: 'cm⁻¹', decimals: 0, falling: true },
  ev: { label: 'photon energy, eV', unit: 'eV', decimals: 3, falling: false },
  'raman-shift': { label: 'Raman shift, cm⁻¹', unit: 'cm⁻¹', decimals: 1, falling: false },
};

export const ORDINATE_LABELS: Readonly<Record<YUnit, string>> = {
  counts: 'counts', absorbance: 'absorbance', transmittance: 'transmittance', 'percent-transmittance': 'transmittance, %',
  reflectance: 'reflectance', 'percent-reflectance': 'reflectance, %', 'absorption-coefficient': 'absorption, cm⁻¹',
  arbitrary: 'intensity, arbitrary', other: 'ordinate of the file', unstated: 'unit not stated',
};

/** The axes a curve of this unit can be drawn on; Raman shift needs the laser wavelength, nm. Empty where the unit is not one of light. */
export function axesFor(unit: XUnit, laserNm: number | undefined): FigureAxis[] {
  switch (unit) {
    case 'nm': case 'nm-vacuum': case 'angstrom': case 'cm-1': case 'ev':
      return laserNm === undefined ? FIGURE_AXES.filter((axis) => axis !== 'raman-shift') : [...FIGURE_AXES];
    case 'raman-shift':
      return laserNm === undefined ? ['raman-shift'] : [...FIGURE_AXES];
    default:
      return [];
  }
}
