import { describe, expect, test } from 'vitest';
import { apply, AS_TAKEN, inSight, invert, pictureView, pointsPerMillimetre, shownPicture, wholeTurn } from '../../../../app/piece/picture-view.ts';
import { scaleBar } from '../../../../app/piece/scale-bar.ts';

const SIZE = { width: 600, height: 400 };
const near = (point: { x: number; y: number }, x: number, y: number): void => {
  expect(point.x).toBeCloseTo(x, 8);
  expect(point.y).toBeCloseTo(y, 8);
};

describe('a photograph as it is looked at', () => {
  test('as taken, every point stays where it is', () => {
    const { size, matrix } = shownPicture(SIZE, AS_TAKEN);
    expect(size).toEqual(SIZE);
    near(apply(matrix, { x: 17, y: 311 }), 17, 311);
  });

  test('a quarter turn clockwise brings the upper left corner to the upper right', () => {
    const { size, matrix } = shownPicture(SIZE, { ...AS_TAKEN, rotation: 90 });
    expect(size).toEqual({ width: 400, height: 600 });
    near(apply(matrix, { x: 0, y: 0 }), 400, 0);
    near(apply(matrix, { x: 600, y: 0 }), 400, 600);
  });

  test.each([180, -90, 12.5, -33, 179.9])('turned by %d°, all corners lie in the box and distances stay', (rotation) => {
    const { size, matrix } = shownPicture(SIZE, { ...AS_TAKEN, rotation });
    const corners = [{ x: 0, y: 0 }, { x: 600, y: 0 }, { x: 600, y: 400 }, { x: 0, y: 400 }].map((corner) => apply(matrix, corner));
    const xs = corners.map((corner) => corner.x);
    const ys = corners.map((corner) => corner.y);
    expect(Math.min(...xs)).toBeCloseTo(0, 8);
    expect(Math.min(...ys)).toBeCloseTo(0, 8);
    expect(Math.max(...xs)).toBeCloseTo(size.width, 8);
    expect(Math.max(...ys)).toBeCloseTo(size.height, 8);
    expect(Math.hypot(corners[0]!.x - corners[2]!.x, corners[0]!.y - corners[2]!.y)).toBeCloseTo(Math.hypot(600, 400), 8);
  });

  test('a crop shifts, and the way back leads to the same point', () => {
    const view = { ...AS_TAKEN, rotation: 30, crop: { x: 0.25, y: 0.1, width: 0.5, height: 0.6 } };
    const whole = shownPicture(SIZE, { ...view, crop: null });
    const { size, matrix } = shownPicture(SIZE, view);
    expect(size.width).toBeCloseTo(whole.size.width / 2, 8);
    const point = { x: 123, y: 77 };
    const shown = apply(matrix, point);
    near(shown, apply(whole.matrix, point).x - 0.25 * whole.size.width, apply(whole.matrix, point).y - 0.1 * whole.size.height);
    near(apply(invert(matrix), shown), 123, 77);
  });

  test('what the crop leaves out is not in sight', () => {
    const shown = shownPicture(SIZE, { ...AS_TAKEN, crop: { x: 0.5, y: 0, width: 0.5, height: 1 } });
    expect([{ x: 400, y: 10 }, { x: 200, y: 10 }].map((point) => inSight(apply(shown.matrix, point), shown))).toEqual([true, false]);
  });

  test('a mark in parts of the picture keeps its place on the stone, however the picture is turned', () => {
    const stone = { x: 0.3 * SIZE.width, y: 0.7 * SIZE.height };
    for (const rotation of [0, 90, -17]) {
      const { matrix } = shownPicture(SIZE, { ...AS_TAKEN, rotation, crop: { x: 0.1, y: 0.1, width: 0.8, height: 0.8 } });
      const back = apply(invert(matrix), apply(matrix, stone));
      near({ x: back.x / SIZE.width, y: back.y / SIZE.height }, 0.3, 0.7);
    }
  });

  test('two points and a length make a scale', () => {
    const view = { ...AS_TAKEN, scale: { from: { x: 0.1, y: 0.5 }, to: { x: 0.6, y: 0.5 }, millimetres: 12 } };
    expect(pointsPerMillimetre(SIZE, view)).toBe(25);
    expect(pointsPerMillimetre(SIZE, AS_TAKEN)).toBeNull();
  });

  test('the bar is 1, 2 or 5 times a power of ten, as long as there is room', () => {
    expect(scaleBar(25, 140)).toEqual({ millimetres: 5, length: 125, label: '5 mm' });
    expect(scaleBar(25, 49)).toMatchObject({ millimetres: 1 });
    expect(scaleBar(4000, 140)).toMatchObject({ millimetres: 0.02, label: '0.02 mm' });
    expect(scaleBar(25_000, 140)).toMatchObject({ label: '5 µm' });
    expect(scaleBar(0.5, 140)).toMatchObject({ label: '200 mm' });
  });

  test('turns are kept within half a turn', () => {
    expect([370, -190, 180, -180, 540, 0].map(wholeTurn)).toEqual([10, 170, 180, 180, 180, 0]);
  });

  test('what can’t be a view is refused', () => {
    const refused = (view: object): boolean => !pictureView.safeParse({ ...AS_TAKEN, ...view }).success;
    expect(refused({ crop: { x: 0.6, y: 0, width: 0.5, height: 1 } })).toBe(true);
    expect(refused({ crop: { x: 0, y: 0, width: 0, height: 1 } })).toBe(true);
    expect(refused({ scale: { from: { x: 0.5, y: 0.5 }, to: { x: 0.5, y: 0.5 }, millimetres: 3 } })).toBe(true);
    expect(refused({ scale: { from: { x: 0, y: 0 }, to: { x: 1, y: 1 }, millimetres: 0 } })).toBe(true);
    expect(refused({})).toBe(false);
  });
});
