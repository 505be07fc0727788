import { z } from 'zod';

const part = z.number().min(0).max(1);
const point = z.strictObject({ x: part, y: part });

/** The least part of a picture that a crop may leave. */
export const LEAST_CROP = 0.02;

/** How a photograph is looked at. It changes nothing of the photograph: the record stays as it came. */
export const pictureView = z.strictObject({
  /** Degrees clockwise around the middle of the upright picture. */
  rotation: z.number().min(-180).max(180),
  /** Part of the turned picture's bounding box that is shown; null: all of it. */
  crop: z.strictObject({ x: part, y: part, width: z.number().min(LEAST_CROP).max(1), height: z.number().min(LEAST_CROP).max(1) })
    .refine((crop) => crop.x + crop.width <= 1 + 1e-9 && crop.y + crop.height <= 1 + 1e-9, 'The crop must lie inside the picture.').nullable(),
  /** Two points of the upright picture, in parts of its width and height, and the length between them in mm. */
  scale: z.strictObject({ from: point, to: point, millimetres: z.number().positive('The length must be more than nothing.').max(1000, 'At most 1000 mm.') })
    .refine((scale) => scale.from.x !== scale.to.x || scale.from.y !== scale.to.y, 'The two ends of the scale must lie apart.').nullable(),
});
export type PictureView = z.infer<typeof pictureView>;

export const AS_TAKEN: PictureView = { rotation: 0, crop: null, scale: null };

export type Size = { readonly width: number; readonly height: number };
export type Point = { readonly x: number; readonly y: number };
/** x' = a·x + c·y + e, y' = b·x + d·y + f, as CSS and SVG write a matrix. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const apply = ([a, b, c, d, e, f]: Matrix, { x, y }: Point): Point => ({ x: a * x + c * y + e, y: b * x + d * y + f });

/** The way back. Throws for a matrix that flattens everything; those made here never do. */
export function invert([a, b, c, d, e, f]: Matrix): Matrix {
  const det = a * d - b * c;
  if (det === 0) throw new Error('invert: the matrix has no inverse');
  return [d / det, -b / det, -c / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det];
}

export type ShownPicture = {
  /** Size of what is shown, in points of the upright picture. */
  readonly size: Size;
  /** From points of the upright picture to points of what is shown. Turns and shifts, never stretches. */
  readonly matrix: Matrix;
};

const RIGHT_ANGLE = 90;
const turned = (degrees: number): readonly [cos: number, sin: number] => {
  // Quarter turns exactly: their cosine would otherwise leave a sliver of a point.
  const quarters = degrees / RIGHT_ANGLE;
  if (Number.isInteger(quarters)) return ([[1, 0], [0, 1], [-1, 0], [0, -1]] as const)[((quarters % 4) + 4) % 4]!;
  const angle = degrees * Math.PI / 180;
  return [Math.cos(angle), Math.sin(angle)];
};

/** What a view shows of an upright picture of a size, and where each of its points comes to lie. */
export function shownPicture({ width, height }: Size, view: PictureView): ShownPicture {
  const [cos, sin] = turned(view.rotation);
  const box = { width: Math.abs(width * cos) + Math.abs(height * sin), height: Math.abs(width * sin) + Math.abs(height * cos) };
  const crop = view.crop ?? { x: 0, y: 0, width: 1, height: 1 };
  const e = box.width / 2 - (cos * width - sin * height) / 2 - crop.x * box.width;
  const f = box.height / 2 - (sin * width + cos * height) / 2 - crop.y * box.height;
  return { size: { width: crop.width * box.width, height: crop.height * box.height }, matrix: [cos, sin, -sin, cos, e, f] };
}

/** Whether a point of what is shown lies inside it, and not in a part that the crop leaves out. */
export const inSight = ({ x, y }: Point, { size }: ShownPicture): boolean => x >= 0 && y >= 0 && x <= size.width && y <= size.height;

/** Points of the upright picture to the millimetre; null where the view has no scale. */
export function pointsPerMillimetre({ width, height }: Size, view: PictureView): number | null {
  if (view.scale === null) return null;
  const { from, to, millimetres } = view.scale;
  return Math.hypot((to.x - from.x) * width, (to.y - from.y) * height) / millimetres;
}

/** Degrees brought into −180 (excluded) to 180. */
export function wholeTurn(degrees: number): number {
  const within = ((degrees % 360) + 360) % 360;
  return within > 180 ? within - 360 : within;
}
