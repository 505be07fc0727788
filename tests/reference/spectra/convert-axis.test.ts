// P. E. Ciddor, Appl. Opt. 35 (1996) 1566, standard air; energies with the exact h, c, e of CODATA 2018; Raman shifts by 1e7/λ0 - 1e7/λ in vacuum.
import { describe, expect, test } from 'vitest';
import { STATABLE_X_UNITS } from '../../../app/spectra/spectrum.ts';
import { airFromRamanShift, airFromVacuum, convertPosition, EV_NM, standardAirRefractivity, vacuumFromAir } from '../../../app/spectra/convert-axis.ts';

test.each([[300, 29156.863, 0.08745], [400, 28276.182, 0.11307], [500, 27897.381, 0.13945], [550, 27783.764, 0.15277], [600, 27698.326, 0.16614], [633, 27653.021, 0.175], [700, 27580.45, 0.19301], [800, 27504.78, 0.21998], [1000, 27416.613, 0.27409]])('refractivity at %f nm', (nm, refractivity, shift) => {
  expect(standardAirRefractivity(nm) * 1e8).toBeCloseTo(refractivity, 2);
  expect(nm - airFromVacuum(nm)).toBeCloseTo(shift, 5);
});

test.each([[633, 632.82500477], [550, 549.84723175], [400, 399.88692724]])('vacuum %f nm in air', (vacuum, air) => {
  expect(Math.abs(airFromVacuum(vacuum) - air)).toBeLessThan(1e-5);
});

test('there and back again within 1e-9 nm', () => {
  for (let nm = 200; nm <= 1700; nm += 7.3) expect(Math.abs(airFromVacuum(vacuumFromAir(nm)) - nm)).toBeLessThan(1e-9);
});

test.each([[254, 4.881268], [365, 3.396827], [405, 3.061338], [532, 2.33053], [633, 1.958676], [785, 1.579417]])('photon energy at %f nm in vacuum', (nm, ev) => {
  expect(EV_NM / nm).toBeCloseTo(ev, 6);
});

describe('place of the diamond line, 1332.4 cm-1', () => {
  // Computed with wavelengths taken as vacuum throughout; taking air into account moves them by less than 0.03 nm.
  test.each([[405, 428.1], [457, 486.63], [488, 521.94], [514.5, 552.37], [532, 572.59], [632.8, 691.07], [785, 876.7], [830, 933.2]])('laser %f nm', (laser, raman) => {
    expect(Math.abs(airFromRamanShift(laser, 1332.4) - raman)).toBeLessThan(0.04);
  });
});

describe('every axis to every other and back', () => {
  const laserNm = 532;
  // Nowhere nearer the laser than 5 nm: there a shift is a small difference of large numbers.
  test.each(STATABLE_X_UNITS.flatMap((from) => STATABLE_X_UNITS.map((to) => [from, to] as const)))('%s to %s, within double precision', (from, to) => {
    for (let nm = 537; nm < 1700; nm += 13.7) {
      const value = convertPosition(nm, 'nm', from, { laserNm });
      const back = convertPosition(convertPosition(value, from, to, { laserNm }), to, from, { laserNm });
      // A shift is the difference of numbers as large as the laser's 18,797 cm-1, whose last digits bound what can be kept.
      const largest = from === 'raman-shift' ? 18_797 : value;
      expect(Math.abs(back - value)).toBeLessThan((to === 'raman-shift' ? 32 : 8) * Number.EPSILON * largest);
    }
  });
  // NIST Atomic Spectra Database: mercury, vacuum and air.
  test.each([[546.2268, 546.0750], [404.7708, 404.6565], [435.9560, 435.8335]])('%f nm in vacuum is %f nm in air', (vacuum, air) => {
    expect(convertPosition(vacuum, 'nm-vacuum', 'nm')).toBeCloseTo(air, 3);
  });
});
