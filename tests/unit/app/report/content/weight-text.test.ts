import { expect, test } from 'vitest';
import { houseSettings } from '../../../../../app/domain/house-settings.ts';
import { weighed } from '../../../../../app/report-document/quantity.ts';
import { weighedText } from '../../../../../app/report/content/weight-text.ts';

const unstated = houseSettings.parse({});
const stated = houseSettings.parse({ balanceUncertaintyCarat: 15, balanceUncertaintyGram: 200 });

test('a weight told in another unit than the balance showed has that balance’s uncertainty, converted', () => {
  expect(weighedText(81_400, 'ct', stated, 'g')).toBe('8.14 ± 0.01 ct');
  expect(weighedText(162_800, 'g', stated, 'ct')).toBe('1.6280 ± 0.0003 g');
});

test('a weight stands alone until the house states what its balance is uncertain by, then with it, on the page and in the data', () => {
  expect(weighedText(4120, 'ct', unstated)).toBe('0.412 ct');
  expect(weighed(4120, 'ct', unstated)).toEqual({ value: '0.412', unit: 'ct', uncertainty: null, covers: '' });
  expect(weighedText(4120, 'ct', stated)).toBe('0.4120 ± 0.0015 ct');
  expect(weighedText(531_000, 'g', stated)).toBe('5.310 ± 0.002 g');
  expect(weighed(531_000, 'g', stated)).toEqual({ value: '5.31', unit: 'g', uncertainty: '0.002', covers: 'one standard deviation: the balance, as the laboratory states it' });
});
