import type { CalibrationStandard } from './standard.ts';

/** A tolerance that a text allows, taken as an even spread: its standard uncertainty. */
const evenly = (tolerance: number): number => tolerance / Math.sqrt(3);

/** Materials that take light away at known places. */
export const ABSORPTION_STANDARDS: readonly CalibrationStandard[] = [
  {
    id: 'polystyrene-infrared', name: 'polystyrene film (infrared)', unit: 'cm-1', shape: 'absorption', fromMemory: false,
    source: 'Japanese Pharmacopoeia 14, supplement 1; European Pharmacopoeia 4.0',
    lines: [
      { position: 3060.0, uncertainty: evenly(1.5), strength: 2 }, { position: 2849.5, uncertainty: evenly(1.5), strength: 2 }, { position: 1942.9, uncertainty: evenly(1.5), strength: 1 },
      { position: 1601.2, uncertainty: evenly(1), strength: 2 }, { position: 1583.0, uncertainty: evenly(1), strength: 1 }, { position: 1154.5, uncertainty: evenly(1), strength: 1 },
      { position: 1028.3, uncertainty: evenly(1), strength: 2 },
    ],
  },
  {
    // Weidner et al., J. Res. NBS 90 (1985) 115 gives ± 0.1 nm for these bands; the positions themselves are from memory, for 1 nm bandwidth.
    id: 'holmium-solution', name: 'holmium oxide in perchloric acid', unit: 'nm', shape: 'absorption', fromMemory: true,
    source: 'NIST SRM 2034 at 1.0 nm bandwidth, 25 °C (positions from memory)',
    lines: [241.13, 249.87, 278.1, 287.18, 333.44, 345.47, 361.31, 385.66, 416.28, 451.3, 467.83, 485.29, 536.64, 640.52]
      .map((position) => ({ position, uncertainty: 0.1, strength: [241.13, 287.18, 361.31, 451.3, 536.64, 640.52].includes(position) ? 2 : 1 })),
  },
  {
    id: 'holmium-glass', name: 'holmium glass', unit: 'nm', shape: 'absorption', fromMemory: true,
    source: 'indicative values of an open page on photometer checks; the filter’s own certificate governs',
    lines: [279.2, 360.9, 453.7, 536.5, 637.7].map((position) => ({ position, uncertainty: 0.3, strength: 1 })),
  },
];
