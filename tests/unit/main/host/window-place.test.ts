import { describe, expect, test } from 'vitest';
import { parseWindowPlace, placeWindow } from '../../../../main/host/window-place.ts';

const screen = { x: 0, y: 0, width: 1920, height: 1080 };
const saved = { x: 100, y: 80, width: 1500, height: 950, maximised: false };

describe('placeWindow', () => {
  test('opens where it was', () => { expect(placeWindow(saved, [screen])).toEqual({ x: 100, y: 80, width: 1500, height: 950 }); });
  test('opens in its usual size for the first time', () => { expect(placeWindow(null, [screen])).toEqual({ width: 1440, height: 900 }); });
  test.each([
    ['a screen that is gone', { ...saved, x: 2500 }],
    ['its title bar above the screen', { ...saved, y: -300 }],
    ['its title bar below the screen', { ...saved, y: 1050 }],
    ['all but a strip at the left', { ...saved, x: -1400 }],
  ])('comes back from %s', (_name, place) => { expect(placeWindow(place, [screen])).toEqual({ width: 1500, height: 950 }); });
  test('finds a second screen', () => { expect(placeWindow({ ...saved, x: -1500 }, [screen, { x: -1920, y: 0, width: 1920, height: 1080 }])).toMatchObject({ x: -1500 }); });
  test('is never too small to work in', () => { expect(placeWindow({ ...saved, width: 300, height: 200 }, [screen])).toMatchObject({ width: 1280, height: 720 }); });
});

test.each(['', '{', 'null', '{"x":1}', '{"x":1.5,"y":0,"width":10,"height":10,"maximised":false}'])('takes %j for nothing', (text) => {
  expect(parseWindowPlace(text)).toBeNull();
});
