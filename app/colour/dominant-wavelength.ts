import { colourMatchingAt } from './matching-functions.ts';
import type { Chromaticity } from './tristimulus.ts';
import { chromaticity } from './tristimulus.ts';

/** The stimulus with equal power at every wavelength: the neutral point for light that shines by itself (CIE 15). */
export const EQUAL_ENERGY: Chromaticity = { x: 1 / 3, y: 1 / 3 };

/** Beyond, chromaticity stands still: the locus has no direction there (CIE 1931 rows). */
const LOCUS_NM = { from: 380, to: 700, step: 1 } as const;
/** Nearer to the neutral point than this a dominant wavelength has no meaning (judgement). */
const NEUTRAL_RADIUS = 0.002;

export type Dominant = {
  /** Wavelength whose colour, mixed with the neutral, gives the same chromaticity; null for purples and for the neutral itself. */
  readonly nm: number | null;
  /** For purples: the wavelength on the opposite side. */
  readonly complementaryNm: number | null;
  /** Distance from the neutral over that of the boundary in the same direction (excitation purity), 0 to 1. */
  readonly purity: number;
};

const spectral = (nm: number): Chromaticity => chromaticity(colourMatchingAt(nm))!;

/** Where the ray from `from` through `through` meets the stretch a–b: how far along the ray (1 is `through`) and along the stretch; null where it does not. */
function meet(from: Chromaticity, through: Chromaticity, a: Chromaticity, b: Chromaticity): { ray: number; along: number } | null {
  const [dx, dy, ex, ey] = [through.x - from.x, through.y - from.y, b.x - a.x, b.y - a.y];
  const det = dx * ey - dy * ex;
  if (det === 0) return null;
  const [fx, fy] = [a.x - from.x, a.y - from.y];
  const ray = (fx * ey - fy * ex) / det;
  const along = (fx * dy - fy * dx) / det;
  return ray > 0 && along >= 0 && along <= 1 ? { ray, along } : null;
}

/** Chromaticities of spectral light, in steps. */
const LOCUS: readonly Chromaticity[] = Array.from({ length: 1 + (LOCUS_NM.to - LOCUS_NM.from) / LOCUS_NM.step }, (_, i) => spectral(LOCUS_NM.from + LOCUS_NM.step * i));

function onLocus(from: Chromaticity, through: Chromaticity): { nm: number; ray: number } | null {
  for (let i = 1; i < LOCUS.length; i++) {
    const hit = meet(from, through, LOCUS[i - 1]!, LOCUS[i]!);
    if (hit) return { nm: LOCUS_NM.from + LOCUS_NM.step * (i - 1 + hit.along), ray: hit.ray };
  }
  return null;
}

/** Dominant wavelength and excitation purity of a chromaticity against a neutral point; purples get the complementary wavelength. */
export function dominantWavelength(point: Chromaticity, neutral: Chromaticity = EQUAL_ENERGY): Dominant {
  if (Math.hypot(point.x - neutral.x, point.y - neutral.y) < NEUTRAL_RADIUS) return { nm: null, complementaryNm: null, purity: 0 };
  const hit = onLocus(neutral, point);
  if (hit) return { nm: hit.nm, complementaryNm: null, purity: Math.min(1, 1 / hit.ray) };
  const purple = meet(neutral, point, LOCUS[0]!, LOCUS.at(-1)!);
  const opposite = onLocus(neutral, { x: 2 * neutral.x - point.x, y: 2 * neutral.y - point.y });
  return { nm: null, complementaryNm: opposite?.nm ?? null, purity: purple ? Math.min(1, 1 / purple.ray) : 1 };
}
