import { expect, test } from 'vitest';
import { laserFromDiamond } from '../../../../app/calibration/laser-from-diamond.ts';
import { airFromRamanShift } from '../../../../app/spectra/convert-axis.ts';

test.each([405, 457.9, 532, 633, 785])('the diamond line gives the laser of %d nm back', (laser) => {
  const found = laserFromDiamond(airFromRamanShift(laser, 1332.4), 0.05);
  expect(found.laserNm).toBeCloseTo(laser, 6);
  expect(found.uncertaintyNm).toBeGreaterThan(0.03);
  expect(found.uncertaintyNm).toBeLessThan(0.06);
});

test('the uncertainty is that of repeated readings', () => {
  const at = airFromRamanShift(532, 1332.4);
  const slope = laserFromDiamond(at + 0.1, 0).laserNm - laserFromDiamond(at, 0).laserNm;
  const { uncertaintyNm } = laserFromDiamond(at, 0.1);
  const fromLine = laserFromDiamond(at, 0).uncertaintyNm;
  expect(Math.hypot(slope, fromLine)).toBeCloseTo(uncertaintyNm, 4);
});
