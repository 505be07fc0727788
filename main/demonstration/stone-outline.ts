/** Outline of a stone from above as |x/width|^power + |y/height|^power = 1; `taper` narrows it towards the top. */
export type Outline = { readonly width: number; readonly height: number; readonly power: number; readonly taper: number };

const ROUND: Outline = { width: 1, height: 1, power: 2, taper: 0 };
const SHAPES: readonly (readonly [RegExp, Outline])[] = [
  [/oval/i, { width: 0.8, height: 1.1, power: 2, taper: 0 }],
  [/pear/i, { width: 0.82, height: 1.12, power: 2, taper: 0.75 }],
  [/emerald/i, { width: 0.76, height: 1.05, power: 7, taper: 0 }],
  [/princess/i, { width: 0.92, height: 0.92, power: 12, taper: 0 }],
  [/cushion|old mine/i, { width: 0.98, height: 0.94, power: 3.2, taper: 0 }],
];

/** The outline that goes with a shape in words; round where the words name none that is known. */
export const outlineOf = (shape: string): Outline => SHAPES.find(([pattern]) => pattern.test(shape))?.[1] ?? ROUND;

/** How far a point lies from the middle, 1 on the outline. x to the right, y downwards, in the same measure as the outline. */
export function distanceIn({ width, height, power, taper }: Outline, x: number, y: number): number {
  const narrow = y < 0 ? 1 - taper * Math.min(1, -y / height) : 1;
  return (Math.abs(x / (width * Math.max(0.08, narrow))) ** power + Math.abs(y / height) ** power) ** (1 / power);
}
