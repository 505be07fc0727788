import { describe, expect, test } from 'vitest';
import { lightColourOf } from '../../../app/images/light-colour.ts';
import { interferenceColour } from '../../../app/images/simulate/retardation.ts';

/**
 * The order of colours on the chart of A. Michel-Lévy & A. Lacroix (Les minéraux des roches, 1888), with retardations in nm as the chart is
 * usually drawn (from memory): first order black, grey, white, yellow, orange, then the sensitive tint near 551; second order violet, blue, green, yellow.
 */
const at = (retardation: number) => lightColourOf(interferenceColour(retardation))!;

describe('interference colours by sin²(2θ)·sin²(πΓ/λ) and the CIE 1931 observer', () => {
  test('no retardation is black, and so is every retardation with its axis along a polariser', () => {
    expect(interferenceColour(0)).toEqual([0, 0, 0]);
    for (const part of interferenceColour(300, 90)) expect(part).toBeCloseTo(0, 12);
  });

  test('the first order brightens from black over grey to white', () => {
    const lightness = [0, 50, 100, 150, 200, 250].map((g) => lightColourOf(interferenceColour(g))?.lab[0] ?? 0);
    expect(lightness).toEqual([...lightness].sort((a, b) => a - b));
    expect([100, 150, 200].map((g) => at(g).purity < 0.15)).toEqual([true, true, true]);
    expect(at(250).lab[0]).toBeGreaterThan(97);
  });

  test('its colours follow in the order of the chart', () => {
    expect([200, 306, 332, 430, 480, 530, 551, 575, 600, 664, 747, 843, 910].map((g) => at(g).word)).toEqual([
      'white', 'yellow', 'yellow', 'yellow', 'orange', 'purple', 'purple', 'blue', 'blue', 'blue', 'greenish-blue', 'yellow-green', 'yellow',
    ]);
  });

  test('about the sensitive tint a few nanometres turn red into blue', () => {
    const red = (g: number): number => { const [r, , b] = interferenceColour(g); return r - b; };
    expect(red(505)).toBeGreaterThan(0);
    expect(red(589)).toBeLessThan(0);
  });

  test('light without polarisers is the unit: no colour is brighter than it', () => {
    for (let g = 0; g <= 1000; g += 25) expect(interferenceColour(g)[1]).toBeLessThanOrEqual(1.2);
  });
});
