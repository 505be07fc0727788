import { describe, expect, test } from 'vitest';
import { isWhole, keepInside, panRange, rangeBetween, zoomRange, type Range } from '../../../../renderer/spectrum/view-range.ts';

const WHOLE: Range = [400, 800];

describe('zooming', () => {
  test('keeps the place under the cursor where it is', () => {
    const range = zoomRange(WHOLE, 500, 0.5, WHOLE);
    expect(range[1] - range[0]).toBeCloseTo(200, 9);
    expect((500 - range[0]) / (range[1] - range[0])).toBeCloseTo(0.25, 9);
  });
  test('never shows more than there is', () => {
    expect(zoomRange([500, 600], 550, 100, WHOLE)).toEqual(WHOLE);
  });
  test('never comes closer than numbers can be told apart', () => {
    let range = WHOLE;
    for (let i = 0; i < 200; i++) range = zoomRange(range, 612.3, 0.5, WHOLE);
    expect(range[1] - range[0]).toBeGreaterThanOrEqual(0.0399);
    expect(range[0]).toBeLessThanOrEqual(612.3);
    expect(range[1]).toBeGreaterThanOrEqual(612.3);
  });
  test('a place at the edge does not push the view out', () => {
    expect(zoomRange([400, 500], 400, 0.5, WHOLE)).toEqual([400, 450]);
  });
});

describe('moving', () => {
  test('stops at both ends without changing its width', () => {
    expect(panRange([450, 550], 1000, WHOLE)).toEqual([700, 800]);
    expect(panRange([450, 550], -1000, WHOLE)).toEqual([400, 500]);
    expect(keepInside([300, 1000], WHOLE)).toEqual(WHOLE);
  });
});

describe('selecting', () => {
  test('takes either direction and cuts at the ends', () => {
    expect(rangeBetween(700, 300, WHOLE)).toEqual([400, 700]);
  });
  test('a twitch selects nothing', () => {
    expect(rangeBetween(500, 500.01, WHOLE)).toBeNull();
  });
  test('everything is known as everything', () => {
    expect(isWhole([400, 800], WHOLE)).toBe(true);
    expect(isWhole([400, 799], WHOLE)).toBe(false);
  });
});
