import { pchip } from '../spectra/pchip.ts';

/** One-phonon components of nitrogen in diamond: A pairs, B four around a vacancy, C single, X = N+, D platelets. */
export const COMPONENTS = ['A', 'B', 'C', 'X', 'D'] as const;
export type Component = (typeof COMPONENTS)[number];

/** Wavenumber and relative height of A, B, C, X, D (1 at 1282 for A, B, D; at 1130 for C; at 1332 for X). From memory of the literature named below, ±5 %, the sharp 1332 and 1344 lines more. */
const ROWS: readonly (readonly [number, number, number, number, number, number])[] = [
  [950, 0.02, 0.3, 0.1, 0, 0], [1010, 0.03, 0.84, 0.18, 0.21, 0], [1050, 0.04, 0.54, 0.25, 0.37, 0], [1095, 0.12, 1.25, 0.49, 0.21, 0],
  [1130, 0.19, 1.31, 1.0, 0.22, 0], [1145, 0.24, 1.7, 0.82, 0.21, 0], [1160, 0.3, 2.4, 0.68, 0.22, 0.05], [1170, 0.37, 2.7, 0.62, 0.22, 0.19],
  [1175, 0.4, 2.65, 0.59, 0.22, 0.3], [1185, 0.44, 2.32, 0.54, 0.22, 0.48], [1210, 0.49, 1.55, 0.43, 0.22, 0.91], [1240, 0.42, 1.02, 0.33, 0.21, 1.0],
  [1265, 0.67, 1.0, 0.33, 0.21, 1.0], [1275, 0.94, 1.0, 0.33, 0.23, 1.0], [1282, 1.0, 1.0, 0.33, 0.24, 1.0], [1300, 0.7, 0.97, 0.33, 0.27, 1.07],
  [1320, 0.33, 1.02, 0.27, 0.41, 1.33], [1328, 0.22, 1.3, 0.22, 0.58, 1.46], [1332, 0.18, 1.7, 0.18, 1.0, 1.25], [1336, 0.12, 0.69, 0.1, 0.25, 0.76],
  [1344, 0.02, 0.08, 0.5, 0.03, 0.19], [1350, 0.01, 0.03, 0.02, 0.01, 0.08], [1358, 0, 0, 0, 0, 0],
];

const WAVENUMBERS = ROWS.map((row) => row[0]);
/** Relative absorption of each component at a wavenumber in cm-1; 0 outside 950–1358. */
export const COMPONENT_SHAPES: Readonly<Record<Component, (cm1: number) => number>> = {
  A: pchip(WAVENUMBERS, ROWS.map((row) => row[1])),
  B: pchip(WAVENUMBERS, ROWS.map((row) => row[2])),
  C: pchip(WAVENUMBERS, ROWS.map((row) => row[3])),
  X: pchip(WAVENUMBERS, ROWS.map((row) => row[4])),
  D: pchip(WAVENUMBERS, ROWS.map((row) => row[5])),
};

/** Atomic ppm of nitrogen per cm-1 (base e) at the component's own maximum, with its standard error. */
export const PPM_PER_CM1 = {
  /** Boyd et al. 1994 (from memory). */
  A: { factor: 16.5, error: 1 },
  /** Boyd, Kiflawi, Woods, Phil. Mag. B 72 (1995) 351; error from memory. */
  B: { factor: 79.4, error: 8 },
  /** Kiflawi et al. 1994 (from memory). */
  C: { factor: 25, error: 2 },
  /** Lawson et al. 1998 (from memory). */
  X: { factor: 5.5, error: 1 },
} as const;
