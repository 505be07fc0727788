import { pchip } from '../spectra/pchip.ts';

/**
 * Absorption coefficient, cm-1 base e, of the lattice between its two maxima near 1992 cm-1: the internal measure of path length.
 * From memory (Thomas & Tropf 1994 and later gem literature, 11.8–12.3): a scale ambiguity of 3 to 6 % on every concentration.
 * A laboratory may set its own; this is the value where none is set.
 */
export const ALPHA_1992 = 12.0;
/** Relative scale error that this carries into every concentration. */
export const SCALE_ERROR = 0.05;

/** Absorption coefficient of pure diamond, cm-1 base e, ±5 %, room temperature (from memory). */
const POINTS: readonly (readonly [number, number])[] = [
  [1300, 0], [1400, 0.1], [1500, 0.3], [1600, 0.7], [1700, 1.6], [1800, 3.2], [1850, 5.2], [1900, 7.2], [1940, 9.7], [1970, 12.6], [1992, 11.9], [2030, 13.1], [2060, 10.4], [2090, 9.0],
  [2120, 8.9], [2140, 11.1], [2160, 13.7], [2180, 12.1], [2200, 11.0], [2250, 8.8], [2300, 5.2], [2350, 2.9], [2400, 4.3], [2458, 4.8], [2500, 4.7], [2560, 4.4],
  [2600, 3.4], [2640, 1.7], [2664, 0.7], [2700, 0.5], [2900, 0.6], [3100, 0.9], [3300, 1.1], [3500, 1.5], [3650, 1.6], [3800, 1.0], [3900, 0.5], [4100, 0.2],
];
const shape = pchip(POINTS.map((p) => p[0]), POINTS.map((p) => p[1]));
const SCALE = ALPHA_1992 / 11.9;

/** Absorption coefficient of the diamond lattice, cm-1 base e, at a wavenumber in cm-1; 0 outside 1300–4100. */
export const latticeAbsorption = (cm1: number): number => SCALE * shape(cm1);
