import { expect, test } from 'vitest';
import { houseSettings } from '../../../../../app/domain/house-settings.ts';
import { dimensionsText, dimensionUncertainty } from '../../../../../app/report/content/dimensions-text.ts';

const loose = (measurements: string) => ({ measurements, mounted: false });
const unstated = houseSettings.parse({});
const stated = houseSettings.parse({ dimensionUncertaintyMm: 0.02 });

test('dimensions are in millimetres, and carry what the house states of its gauge', () => {
  expect(dimensionUncertainty(loose(''), unstated)).toBeNull();
  expect(dimensionsText(loose(' 4.79 – 4.81 × 2.94 '), unstated)).toBe('4.79 – 4.81 × 2.94 mm');
  expect(dimensionsText(loose('about 5.1'), stated)).toBe('about 5.1 mm, each ± 0.02 mm');
});

test('a mounted stone is measured as surely as the house reads in a mounting', () => {
  expect(dimensionsText({ measurements: 'about 5.1', mounted: true }, stated)).toBe('about 5.1 mm, each ± 0.05 mm');
});

test('a unit that a person wrote is not written twice', () => {
  expect(dimensionsText(loose('4.79 × 2.94 mm'), unstated)).toBe('4.79 × 2.94 mm');
  expect(dimensionsText(loose('4.79mm × 2.94mm'), stated)).toBe('4.79mm × 2.94mm, each ± 0.02 mm');
});
