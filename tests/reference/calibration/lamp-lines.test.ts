import { expect, test } from 'vitest';
import { ARGON_LINES, MERCURY_LINES, NEON_LINES } from '../../../app/calibration/lamp-lines.ts';
import { laserFromDiamond } from '../../../app/calibration/laser-from-diamond.ts';
import { airFromVacuum } from '../../../app/spectra/convert-axis.ts';

// NIST Atomic Spectra Database lists each line in vacuum and in air. Both columns, typed once each, must agree through the dispersion of air
// (Ciddor, Appl. Opt. 35 (1996) 1566): a slip of the pen in either shows.
test.each([['mercury', MERCURY_LINES], ['neon', NEON_LINES], ['argon', ARGON_LINES]] as const)('%s: air and vacuum wavelengths agree', (_name, lines) => {
  let pairs = 0;
  for (const [air, vacuum] of lines) {
    if (vacuum === null) continue;
    expect(Math.abs(airFromVacuum(vacuum) - air)).toBeLessThan(1e-4);
    pairs++;
  }
  expect(pairs).toBeGreaterThan(15);
});

test('lines that everybody knows', () => {
  const has = (lines: readonly (readonly [number, number | null, number])[], nm: number) => lines.some(([air]) => Math.abs(air - nm) < 5e-5);
  // Sansonetti, Salit & Reader, Appl. Opt. 35 (1996) 74; NIST ASD.
  for (const nm of [253.6521, 404.6565, 435.8335, 546.075, 576.961, 579.067]) expect(has(MERCURY_LINES, nm)).toBe(true);
  for (const nm of [585.24878, 640.2248, 703.24128]) expect(has(NEON_LINES, nm)).toBe(true);
  for (const nm of [696.5431, 763.5106, 811.5311]) expect(has(ARGON_LINES, nm)).toBe(true);
});

test('a diamond line at 430.00 nm belongs to a laser of 406.70 nm', () => {
  // Computed from 1332.4 cm-1; used directly, air wavelengths differ by 0.007 nm here.
  expect(Math.abs(laserFromDiamond(430, 0.05).laserNm - 406.7)).toBeLessThan(0.01);
});
