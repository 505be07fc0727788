// Sideband maxima of the one-mode Huang–Rhys model, computed from the model's definition independently (vacuum wavelengths, per nm).
import { expect, test } from 'vitest';
import { sidebandPerNm } from '../../../app/spectra/simulate/vibronic.ts';
import { EV_NM } from '../../../app/spectra/convert-axis.ts';

test.each([
  ['NV- warm', 1.945, 3.73, 0.065, 0.0075, 0.05, 687.1, 757.2],
  ['NV0 warm', 2.156, 3.3, 0.046, 0.008, 0.045, 604.6, 637.7],
  ['NV0 cold', 2.156, 3.3, 0.046, 0.0015, 0.03, 601.6, 635.5],
  ['N3 warm', 2.985, 3.45, 0.08, 0.025, 0.045, 439.3, 471.5],
  ['H3 warm', 2.463, 3.6, 0.041, 0.018, 0.035, 524.2, 550.4],
  ['H4 warm', 2.498, 3.6, 0.043, 0.02, 0.035, 517.2, 544.2],
  ['GR1 warm', 1.673, 2.8, 0.041, 0.009, 0.035, 761.3, 818.4],
  ['SiV- warm', 1.68, 0.29, 0.064, 0.0115, 0.025, 766.9, 773.7],
])('%s', (_, e0, s, phonon, zeroWidth, phononWidth, maximum, redHalf) => {
  const zero = EV_NM / e0;
  const at = (nm: number): number => sidebandPerNm(nm, zero, { s, phonon, zeroWidth, phononWidth }, 'emission');
  let top = zero;
  for (let nm = zero; nm < zero + 200; nm += 0.05) if (at(nm) > at(top)) top = nm;
  expect(Math.abs(top - maximum)).toBeLessThan(0.3);
  let half = top;
  while (at(half) > at(top) / 2) half += 0.05;
  expect(Math.abs(half - redHalf)).toBeLessThan(0.3);
});
