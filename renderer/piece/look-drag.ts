import { apply, invert, LEAST_CROP, shownPicture, type PictureView, type Point, type Size } from '../../app/piece/picture-view.ts';

/** Length that a new scale begins with, until it is written. */
const FIRST_LENGTH_MM = 10;
const within = (value: number): number => Math.min(1, Math.max(0, value));

/** The view after a part was dragged out as the crop; `from` and `to` are points of what was shown. Null where the part is too small. */
export function cropTo(picture: Size, view: PictureView, from: Point, to: Point): PictureView | null {
  const whole = shownPicture(picture, { ...view, crop: null }).size;
  const before = view.crop ?? { x: 0, y: 0, width: 1, height: 1 };
  const [left, right] = [Math.min(from.x, to.x) / whole.width + before.x, Math.max(from.x, to.x) / whole.width + before.x];
  const [top, bottom] = [Math.min(from.y, to.y) / whole.height + before.y, Math.max(from.y, to.y) / whole.height + before.y];
  const crop = { x: within(left), y: within(top), width: within(right) - within(left), height: within(bottom) - within(top) };
  return crop.width < LEAST_CROP || crop.height < LEAST_CROP ? null : { ...view, crop };
}

/** The view after a line was drawn along a known length. Null where it has none. */
export function scaleAlong(picture: Size, view: PictureView, from: Point, to: Point): PictureView | null {
  const back = invert(shownPicture(picture, view).matrix);
  const part = (point: Point): Point => { const at = apply(back, point); return { x: within(at.x / picture.width), y: within(at.y / picture.height) }; };
  const [a, b] = [part(from), part(to)];
  return a.x === b.x && a.y === b.y ? null : { ...view, scale: { from: a, to: b, millimetres: view.scale?.millimetres ?? FIRST_LENGTH_MM } };
}
