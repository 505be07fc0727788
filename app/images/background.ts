import { linearTable } from './linear-light.ts';
import { octant, type Disc } from './measure-disc.ts';
import type { Photograph } from './photograph.ts';

export type Background = {
  readonly rgb: readonly [number, number, number];
  /** How uneven it is about the stone, as a standard deviation: under the stone it is known no better. */
  readonly error: number;
};

/** The ring about a stone in which its background is looked for, in radii, and how many points it must hold (judgement). */
export const BACKGROUND_DEFAULTS = { from: 1.25, to: 1.7, leastPoints: 60, mostPoints: 4000 } as const;

/** Share of the ring, sorted by brightness, that is averaged: neither glints of the metal nor dark gaps. */
const MIDDLE = { from: 0.15, to: 0.85 } as const;

/**
 * Stray light about a stone: the mean of the ordinary points in a ring about it that no other stone covers.
 * Null where too few are left.
 */
export function backgroundAbout({ width, height, data, most }: Photograph, disc: Disc, others: readonly Disc[]): Background | null {
  const { from, to, leastPoints, mostPoints } = BACKGROUND_DEFAULTS;
  const linear = linearTable(most);
  const [inner, outer] = [from * disc.radius, to * disc.radius + 2];
  const near = others.filter((other) => Math.hypot(other.x - disc.x, other.y - disc.y) < outer + 1.15 * other.radius);
  const stride = Math.max(1, Math.floor(Math.sqrt(Math.PI * (outer * outer - inner * inner) / mostPoints)));
  const seen: { brightness: number; direction: number; at: number }[] = [];
  for (let y = Math.max(0, Math.ceil(disc.y - outer)); y <= Math.min(height - 1, disc.y + outer); y += stride) {
    for (let x = Math.max(0, Math.ceil(disc.x - outer)); x <= Math.min(width - 1, disc.x + outer); x += stride) {
      const distance = (x - disc.x) ** 2 + (y - disc.y) ** 2;
      if (distance < inner * inner || distance > outer * outer) continue;
      if (near.some((other) => (x - other.x) ** 2 + (y - other.y) ** 2 < (1.15 * other.radius) ** 2)) continue;
      const at = 3 * (y * width + x);
      seen.push({ brightness: (linear[data[at]!]! + linear[data[at + 1]!]! + linear[data[at + 2]!]!) / 3, direction: octant(x - disc.x, y - disc.y), at });
    }
  }
  if (seen.length < leastPoints) return null;
  seen.sort((a, b) => a.brightness - b.brightness);
  const kept = seen.slice(Math.floor(MIDDLE.from * seen.length), Math.ceil(MIDDLE.to * seen.length));
  const mean = (channel: number): number => kept.reduce((sum, { at }) => sum + linear[data[at + channel]!]!, 0) / kept.length;
  return { rgb: [mean(0), mean(1), mean(2)], error: unevenness(kept) };
}

/** Standard deviation of the means of eight directions, each with enough points; of all points where the ring is too broken for that. */
function unevenness(kept: readonly { readonly brightness: number; readonly direction: number }[]): number {
  const means: number[] = [];
  for (let direction = 0; direction < 8; direction++) {
    const own = kept.filter((point) => point.direction === direction);
    if (own.length >= 6) means.push(own.reduce((sum, { brightness }) => sum + brightness, 0) / own.length);
  }
  return Math.max(1e-5, spread(means.length >= 4 ? means : kept.map(({ brightness }) => brightness)));
}

function spread(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
