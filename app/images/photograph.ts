/** A photograph as it is measured: upright, three channels R, G, B one after the other, sRGB-encoded (IEC 61966-2-1). */
export type Photograph = {
  readonly width: number;
  readonly height: number;
  /** Full scale: 255 for 8 bits, 65535 for 16. */
  readonly most: 255 | 65535;
  readonly data: Uint8Array | Uint16Array;
};

/** Linear-light brightness, 0 to 1, row after row. */
export type BrightnessGrid = { readonly width: number; readonly height: number; readonly data: Float32Array };

/** A round place on an upright photograph, in fractions: x of the width, y of the height, radius of the width. */
export type Outline = { readonly x: number; readonly y: number; readonly radius: number };
