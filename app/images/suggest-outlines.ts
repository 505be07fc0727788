import { median, selectKth } from '../spectra/statistics.ts';
import { boxBlur } from './box-blur.ts';
import { createRegionLabeller, type Region } from './label-regions.ts';
import type { BrightnessGrid, Outline } from './photograph.ts';
import { splitTouching } from './split-touching.ts';

/** How bright places are told apart (judgement; tried on simulated pieces). */
export const OUTLINE_DEFAULTS = {
  /** Cells along the longer side that this works on; finer grids are no better and slower. */
  longSide: 720,
  /** Blur that smooths facets away, as a share of the longer side. */
  blurShare: 0.004,
  /** Darkest level looked at, in standard deviations of the ground, and as a share of the brightest place. */
  groundSigmas: 6, leastShare: 0.01,
  /** Steps between that level and the brightest. */
  levels: 20,
  /** Where an outline is drawn between the ground and a stone's own brightness. */
  outlineAt: 0.4,
  /** A part counts as a stone of its own where it parts from the rest below this share of its own brightness over the ground: facets part higher. */
  partingAt: 0.55,
  /** Smallest and largest radius, as shares of the longer side. */
  leastRadius: 0.006, mostRadius: 0.25,
  mostOutlines: 400,
} as const;

/**
 * Places that shine on a darker ground, as round outlines that a person corrects: places that part from one another at some
 * level of brightness, each outlined between the ground and its own brightness, touching ones parted at their waist.
 * In reading order. Empty where nothing stands off the ground.
 * @param brightness linear light, about `OUTLINE_DEFAULTS.longSide` cells along the longer side
 */
export function suggestOutlines(brightness: BrightnessGrid): Outline[] {
  const { width, height } = brightness;
  const longSide = Math.max(width, height);
  const { data } = boxBlur(brightness, Math.max(1, Math.round(OUTLINE_DEFAULTS.blurShare * longSide)));
  const ground = groundOf(data);
  let top = 0;
  for (const value of data) if (value > top) top = value;
  const lowest = ground.level + Math.max(OUTLINE_DEFAULTS.groundSigmas * ground.sigma, OUTLINE_DEFAULTS.leastShare * (top - ground.level));
  if (!(top > lowest)) return [];
  const leastCells = Math.PI * (OUTLINE_DEFAULTS.leastRadius * longSide) ** 2;
  const factor = ((top - ground.level) / (lowest - ground.level)) ** (1 / OUTLINE_DEFAULTS.levels);

  const work = new Float64Array(data.length);
  const labeller = createRegionLabeller(data, width);
  const places = labeller.above(lowest, null).filter((region) => region.cells.length >= leastCells)
    .flatMap((region) => partsOf(region, lowest));
  return places.flatMap((region) => splitTouching(region, width))
    .filter(({ radius }) => radius >= OUTLINE_DEFAULTS.leastRadius * longSide && radius <= OUTLINE_DEFAULTS.mostRadius * longSide)
    .sort((a, b) => b.radius - a.radius).slice(0, OUTLINE_DEFAULTS.mostOutlines)
    .map(({ x, y, radius }) => ({ x: (x + 0.5) / width, y: (y + 0.5) / height, radius: radius / width }))
    .sort(readingOrder);

  /** Brightness of a region without its few brightest cells. */
  function summitOf({ cells }: Region): number {
    for (let i = 0; i < cells.length; i++) work[i] = data[cells[i]!]!;
    return selectKth(work, cells.length, Math.floor(0.9 * (cells.length - 1)));
  }

  /** The separate places inside one region: itself, outlined at its own height, or its parts where it falls apart higher up. */
  function partsOf(region: Region, level: number): Region[] {
    const summit = summitOf(region);
    for (let next = ground.level + (level - ground.level) * factor; next < summit; next = ground.level + (next - ground.level) * factor) {
      const parts = labeller.above(next, region.cells)
        .filter((part) => part.cells.length >= leastCells && next - ground.level <= OUTLINE_DEFAULTS.partingAt * (summitOf(part) - ground.level));
      if (parts.length >= 2) return parts.flatMap((part) => partsOf(part, next));
    }
    const outline = ground.level + OUTLINE_DEFAULTS.outlineAt * (summit - ground.level);
    if (outline <= level) return [region];
    return labeller.above(outline, region.cells).sort((a, b) => b.cells.length - a.cells.length).slice(0, 1);
  }
}

/** Level and scatter of the ground: the darker half of all cells, mirrored at its top. */
function groundOf(data: Float32Array): { level: number; sigma: number } {
  const stride = Math.max(1, Math.floor(data.length / 20_000));
  const sample = Float64Array.from({ length: Math.floor(data.length / stride) }, (_, i) => data[i * stride]!).sort();
  const level = sample[Math.floor(0.25 * sample.length)]!;
  const below = sample.subarray(0, Math.max(2, Math.floor(0.25 * sample.length)));
  return { level, sigma: 1.4826 * median(below.map((value) => level - value)) };
}

/** By rows of about a stone's height, then from left to right. */
const readingOrder = (a: Outline, b: Outline): number => (Math.abs(a.y - b.y) > 0.03 ? a.y - b.y : a.x - b.x);
