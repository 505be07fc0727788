import { expect, test } from 'vitest';
import { photographStrain } from '../../../../app/images/simulate/retardation.ts';
import { wholeOutline } from '../../../../app/images/whole-outline.ts';

test('a banded stone is one place, not one for each band', () => {
  const outline = wholeOutline(photographStrain((x) => ({ retardation: 160 + 120 * Math.sin(14 * x), angleDegrees: 45 }), 400))!;
  expect(outline.x).toBeCloseTo(0.5, 1);
  expect(outline.y).toBeCloseTo(0.5, 1);
  expect(outline.radius).toBeGreaterThan(0.42);
  expect(outline.radius).toBeLessThan(0.52);
});

test('a black photograph shows no stone', () => {
  expect(wholeOutline({ width: 300, height: 200, most: 255, data: new Uint8Array(180_000) })).toBeNull();
});
