import { expect, test } from 'vitest';
import { contrast, luminance } from '../../../app/figure/contrast.ts';

// WCAG 2.2, definitions "relative luminance" and "contrast ratio": black on white is 21:1, equal colours 1:1.
test('ends of the scale', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#808080', '#808080')).toBe(1);
});

// WCAG 2.2 gives the weights 0.2126, 0.7152, 0.0722 of the primaries.
test('primaries', () => {
  expect([luminance('#ff0000'), luminance('#00ff00'), luminance('#0000ff')]).toEqual([0.2126, 0.7152, 0.0722]);
});

// #767676 is the lightest grey that reaches 4.5:1 on white (W3C, Understanding SC 1.4.3; from memory).
test('the threshold grey', () => {
  expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5);
  expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
});
