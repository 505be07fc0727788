import { convertPosition } from '../spectra/convert-axis.ts';
import { AXIS_STYLE } from './figure-axes.ts';
import type { FigureAxis } from './figure-model.ts';
import { formatNumber } from './format-number.ts';

/** One place of the spectrum in every unit; null where it has no meaning (no laser, or no light). Wavelength in air. */
export type CursorReadout = { readonly nm: number | null; readonly wavenumber: number | null; readonly ev: number | null; readonly ramanShift: number | null };

const orNull = (value: number): number | null => (Number.isFinite(value) ? value : null);
const positive = (value: number): number | null => (Number.isFinite(value) && value > 0 ? value : null);

export function cursorReadout(position: number, unit: FigureAxis, laserNm?: number): CursorReadout {
  const to = (target: FigureAxis): number => convertPosition(position, unit, target, laserNm === undefined ? {} : { laserNm });
  return { nm: positive(to('nm')), wavenumber: positive(to('cm-1')), ev: positive(to('ev')), ramanShift: unit === 'raman-shift' ? position : orNull(to('raman-shift')) };
}

/** One decimal more than lines are labelled with: a cursor reads finer than a peak is known. */
const EXTRA: Readonly<Record<FigureAxis, number>> = { nm: 1, 'nm-vacuum': 1, 'cm-1': 1, ev: 1, 'raman-shift': 0 };
const write = (value: number | null, axis: FigureAxis): string =>
  value === null ? '–' : `${formatNumber(value, AXIS_STYLE[axis].decimals + EXTRA[axis])} ${AXIS_STYLE[axis].unit}`;

/** The read-out in words with units, in the order nm, cm⁻¹, eV, Raman shift; an en dash where there is none. */
export const readoutTexts = (readout: CursorReadout): readonly [string, string, string, string] =>
  [write(readout.nm, 'nm'), write(readout.wavenumber, 'cm-1'), write(readout.ev, 'ev'), write(readout.ramanShift, 'raman-shift')];
