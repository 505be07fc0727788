import { expect, test } from 'vitest';
import { colourMatching, visibleColour } from '../../../app/figure/visible-colour.ts';

// CIE 1931 2° colour matching functions, CIE 015 table values (from memory). The fit is a smooth one: 0.03 of the scale of z̄, which peaks at 1.78.
test.each([
  [450, 0.3362, 0.038, 1.7721],
  [500, 0.0049, 0.323, 0.272],
  [555, 0.5121, 1.0, 0.0057],
  [600, 1.0622, 0.631, 0.0008],
  [650, 0.2835, 0.107, 0.0],
])('colour matching at %d nm', (nm, x, y, z) => {
  const found = colourMatching(nm);
  [x, y, z].forEach((value, i) => expect(Math.abs(found[i]! - value)).toBeLessThan(0.05));
});

const parts = (nm: number): [number, number, number] => {
  const n = Number.parseInt(visibleColour(nm)!.slice(1), 16);
  return [n >> 16, (n >> 8) & 255, n & 255];
};

test('the order of colours is that of the rainbow', () => {
  const [r450, g450, b450] = parts(450);
  expect(b450).toBeGreaterThan(Math.max(r450, g450));
  const [r530, g530, b530] = parts(530);
  expect(g530).toBeGreaterThan(Math.max(r530, b530));
  const [r580, g580, b580] = parts(580);
  expect(Math.min(r580, g580)).toBeGreaterThan(b580);
  for (const nm of [640, 690, 740, 779]) {
    const [r, g, b] = parts(nm);
    expect(r).toBeGreaterThan(4 * Math.max(g, b));
  }
});

test('nothing is coloured where the eye sees nothing', () => {
  for (const nm of [200, 379.9, 780.1, 1000, Number.NaN]) expect(visibleColour(nm)).toBeNull();
});
