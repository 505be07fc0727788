// Second-order kinetics with E/R = 81160 K and 293608 per ppm and second (W. R. Taylor et al. 1990; A. C. Leahy, W. R. Taylor 1997; constants from memory).
// Temperatures computed from the law; year of 3.15576e7 s.
import { expect, test } from 'vitest';
import { aggregatedFraction, AGGREGATION, aggregationTemperature, aggregationTemperatureError } from '../../../app/infrared/aggregation.ts';

/** Activation energy in eV over Boltzmann's constant. */
const KELVIN_PER_EV = 11_604.518;

test.each([
  [600, 0.3, 3.0, 1104.2, 1111.4], [600, 0.3, 1.0, 1130.4, 1137.7], [200, 0.5, 3.0, 1151.3, 1158.6],
  [1000, 0.1, 3.0, 1062.1, 1069.0], [50, 0.9, 3.0, 1246.9, 1254.7], [800, 0.6, 2.9, 1128.0, 1135.2],
])('%f ppm, %f as B, %f Ga', (ppm, fraction, ga, celsius, withOtherEnergy) => {
  expect(Math.abs(aggregationTemperature(ppm, fraction, ga)! - celsius)).toBeLessThan(0.06);
  // The trap: the energy of another set beside this factor.
  const mixed = aggregationTemperature(ppm, fraction, ga, { ...AGGREGATION, activationK: 7.03 * KELVIN_PER_EV })!;
  expect(Math.abs(mixed - withOtherEnergy)).toBeLessThan(0.5);
  expect(aggregatedFraction(ppm, aggregationTemperature(ppm, fraction, ga)!, ga)).toBeCloseTo(fraction, 10);
});

test.each([[1150, 0.74], [1100, 0.263], [1200, 0.952]])('600 ppm for 3 Ga at %f °C', (celsius, fraction) => {
  expect(aggregatedFraction(600, celsius, 3)).toBeCloseTo(fraction, 3);
});

test.each([[2000, 0.0001], [2300, 0.006], [2500, 0.06], [2700, 0.31]])('300 ppm for one hour in a press at %f °C hardly aggregate', (celsius, fraction) => {
  const hourGa = 3600 / 3.15576e16;
  expect(aggregatedFraction(300, celsius, hourGa) / fraction).toBeGreaterThan(0.7);
  expect(aggregatedFraction(300, celsius, hourGa) / fraction).toBeLessThan(1.5);
});

test('no temperature without both aggregates', () => {
  expect(aggregationTemperature(100, 0, 3)).toBeNull();
  expect(aggregationTemperature(100, 1, 3)).toBeNull();
});

test('the error follows from the law: against differences', () => {
  const at = (a: number, b: number): number => aggregationTemperature(a + b, b / (a + b), 3)!;
  const here = at(300, 150);
  const [da, db] = [(at(300.01, 150) - here) / 0.01, (at(300, 150.01) - here) / 0.01];
  expect(aggregationTemperatureError(300, 150, here, { aa: 100, bb: 64, ab: -30 })).toBeCloseTo(Math.sqrt(da * da * 100 + db * db * 64 - 2 * 30 * da * db), 3);
});
