import { z } from 'zod';
import { decodeSrgb } from '../colour/srgb.ts';
import type { Disc } from './measure-disc.ts';
import type { Photograph } from './photograph.ts';
import { linearTable } from './linear-light.ts';

/** Version of the reading; stored with its results. */
export const STRAIN_VERSION = 'strain pattern 1';

/** How strain between crossed polarisers is read (judgement; tried on simulated gratings and retardation fields). */
export const STRAIN_DEFAULTS = {
  /** Part of the outline that is read, in its radius. */
  inner: 0.9,
  /** Cells across the stone that it is read on. */
  cells: 160,
  /** Below this linear light a place is dark: the eighth of full scale that sRGB shows as a third. */
  darkBelow: decodeSrgb(0.33),
  /** Contrast below which hardly any strain shows: standard deviation over the sum of mean and a floor against a dark frame. */
  leastContrast: 0.12, contrastFloor: 0.02,
  /** Dark share above which hardly any strain shows. */
  mostDark: 0.9,
  /** Coherence of the directions from which the pattern is directional. */
  leastCoherence: 0.35,
} as const;

export const strainPattern = z.object({
  /** How far the directions agree: 0 none, 1 all the same. */
  coherence: z.number(),
  /** Direction along the bands, degrees from the horizontal, anticlockwise, 0 to below 180; null where none leads. */
  directionDegrees: z.number().nullable(),
  /** Standard deviation of the light over its mean and the floor. */
  contrast: z.number(),
  /** Share of dark places. */
  dark: z.number(),
  indication: z.enum(['directional', 'mottled', 'nearly-none']),
  /** 0 to 1: how far the deciding number lies from its limit. */
  confidence: z.number(),
});
export type StrainPattern = z.infer<typeof strainPattern>;

/** Mean light on a grid of cells about a disc; NaN outside it. Every point counts once. */
function gridOf({ width, height, data, most }: Photograph, disc: Disc): { side: number; light: Float64Array } {
  const linear = linearTable(most);
  const radius = STRAIN_DEFAULTS.inner * disc.radius;
  const side = Math.max(16, Math.min(STRAIN_DEFAULTS.cells, Math.floor(2 * radius)));
  const cell = 2 * radius / side;
  const [sums, counts] = [new Float64Array(side * side), new Float64Array(side * side)];
  for (let y = Math.max(0, Math.ceil(disc.y - radius)); y <= Math.min(height - 1, disc.y + radius); y++) {
    for (let x = Math.max(0, Math.ceil(disc.x - radius)); x <= Math.min(width - 1, disc.x + radius); x++) {
      if ((x - disc.x) ** 2 + (y - disc.y) ** 2 > radius * radius) continue;
      const [i, j] = [Math.min(side - 1, Math.floor((x - disc.x + radius) / cell)), Math.min(side - 1, Math.floor((y - disc.y + radius) / cell))];
      const at = 3 * (y * width + x);
      sums[j * side + i]! += (linear[data[at]!]! + linear[data[at + 1]!]! + linear[data[at + 2]!]!) / 3;
      counts[j * side + i]! += 1;
    }
  }
  return { side, light: sums.map((sum, k) => (counts[k]! > 0 ? sum / counts[k]! : Number.NaN)) };
}

/** Sums of the structure tensor over the disc, of the square root of light: bright places would drown the rest. */
function tensorOf({ side, light }: { side: number; light: Float64Array }): { xx: number; xy: number; yy: number } {
  const root = light.map((value) => Math.sqrt(value));
  const soft = new Float64Array(side * side);
  // A mean over three by three cells takes the noise of single points out of the directions.
  for (let j = 1; j < side - 1; j++) for (let i = 1; i < side - 1; i++) {
    let sum = 0;
    for (let dj = -1; dj <= 1; dj++) for (let di = -1; di <= 1; di++) sum += root[(j + dj) * side + i + di]!;
    soft[j * side + i] = sum / 9;
  }
  let [xx, xy, yy] = [0, 0, 0];
  for (let j = 2; j < side - 2; j++) for (let i = 2; i < side - 2; i++) {
    const at = j * side + i;
    const [gx, gy] = [soft[at + 1]! - soft[at - 1]!, soft[at + side]! - soft[at - side]!];
    if (Number.isNaN(gx) || Number.isNaN(gy)) continue;
    xx += gx * gx; xy += gx * gy; yy += gy * gy;
  }
  return { xx, xy, yy };
}

const clamp = (value: number): number => Math.max(0, Math.min(1, value));

/**
 * Reads the strain pattern of a stone between crossed polarisers: how far its directions agree (structure tensor, J. Bigün &
 * G. Granlund, ICCV 1987), which one leads, contrast and darkness, and what they indicate. The examiner decides: inclusions,
 * facets and the lamp's own pattern can look like strain. Null where the disc holds too little.
 */
export function readStrain(photograph: Photograph, disc: Disc): StrainPattern | null {
  const grid = gridOf(photograph, disc);
  const values = grid.light.filter((value) => !Number.isNaN(value));
  if (values.length < 100) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
  const { xx, xy, yy } = tensorOf(grid);
  const trace = xx + yy;
  const coherence = trace > 0 ? Math.hypot(xx - yy, 2 * xy) / trace : 0;
  // The tensor's main axis lies across the bands; image rows run downwards, angles are counted upwards.
  const across = 0.5 * Math.atan2(2 * xy, xx - yy);
  const along = ((90 - (across * 180) / Math.PI) % 180 + 180) % 180;
  const contrast = spread / (mean + STRAIN_DEFAULTS.contrastFloor);
  const dark = values.filter((value) => value < STRAIN_DEFAULTS.darkBelow).length / values.length;
  return { coherence, contrast, dark, ...indicate({ coherence, contrast, dark }), directionDegrees: coherence >= STRAIN_DEFAULTS.leastCoherence ? along : null };
}

function indicate({ coherence, contrast, dark }: Pick<StrainPattern, 'coherence' | 'contrast' | 'dark'>): Pick<StrainPattern, 'indication' | 'confidence'> {
  const { leastContrast, mostDark, leastCoherence } = STRAIN_DEFAULTS;
  if (contrast < leastContrast) return { indication: 'nearly-none', confidence: clamp(1 - contrast / leastContrast) };
  if (dark > mostDark) return { indication: 'nearly-none', confidence: clamp((dark - mostDark) / (1 - mostDark)) };
  if (coherence >= leastCoherence) return { indication: 'directional', confidence: clamp((coherence - leastCoherence) / (0.8 - leastCoherence)) };
  return { indication: 'mottled', confidence: clamp(1 - coherence / leastCoherence) };
}
