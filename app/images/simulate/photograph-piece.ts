import { encodeSrgb } from '../../colour/srgb.ts';
import { seededRandom } from '../../spectra/simulate/seeded-random.ts';
import type { Photograph } from '../photograph.ts';
import type { Light, SimulatedPiece, SimulatedStone } from './simulated-piece.ts';

export type SimulatedView = {
  readonly light: 'long-wave' | 'short-wave' | 'white';
  /** The piece on the photograph against the unturned one: turned about the centre, then moved, in points. */
  readonly shift?: { readonly dx: number; readonly dy: number; readonly degrees: number };
  /** Longer exposure in stops: everything is 2 to this power brighter. */
  readonly stops?: number;
  /** Stray light that lies over everything, linear. */
  readonly haze?: Light;
  /** Noise of a point: standard deviation in the dark, and variance per light. */
  readonly noise?: { readonly read: number; readonly shot: number };
  /** Radius of the lens' blur, points. */
  readonly blur?: number;
  readonly bits?: 8 | 16;
  readonly seed?: number;
};

export const VIEW_DEFAULTS = {
  shift: { dx: 0, dy: 0, degrees: 0 }, stops: 0, haze: [0.012, 0.008, 0.02], noise: { read: 0.002, shot: 0.0002 }, blur: 1.2, bits: 8, seed: 1,
} as const satisfies Partial<SimulatedView>;

/** Facets: a pattern of eight that shines a third brighter and darker; its mean over the disc is 1. */
const facets = (angle: number, radius: number, phase: number): number => 1 + 0.33 * Math.cos(8 * angle + phase) * Math.sin(Math.PI * radius);

/** From 0 to 1 over the width of the blur. */
const edge = (distance: number, blur: number): number => {
  const t = Math.max(0, Math.min(1, 0.5 + distance / (2 * blur)));
  return t * t * (3 - 2 * t);
};

const stoneLight = (stone: SimulatedStone, light: SimulatedView['light']): Light =>
  (light === 'long-wave' ? stone.longWave : light === 'short-wave' ? stone.shortWave : [0.42, 0.42, 0.42]);

/** How the metal between the stones shines: slow waves, the same under every light but for its strength. */
const METAL: Readonly<Record<SimulatedView['light'], number>> = { 'long-wave': 0.006, 'short-wave': 0.008, white: 0.12 };

/** Encoded value of linear light, looked up by its square root, where the curve is nearly straight. */
const ENCODE_STEPS = 16384;
const ENCODED = Float32Array.from({ length: ENCODE_STEPS + 1 }, (_, i) => encodeSrgb((i / ENCODE_STEPS) ** 2));
const NOISE_LENGTH = 1 << 17;

/**
 * A photograph of an invented piece, as a camera would give it: turned, moved, blurred, with noise, rounded and clipped.
 * The scene is computed at the place of each point, so shifts by parts of a point are exact. Same seed, same points.
 */
export function photographPiece(piece: SimulatedPiece, view: SimulatedView): Photograph {
  const { light, shift, stops, haze, noise, blur, bits, seed } = { ...VIEW_DEFAULTS, ...view };
  const { width, height } = piece;
  const gain = 2 ** stops;
  const scene = new Float32Array(3 * width * height);
  const turn = shift.degrees * Math.PI / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [cx, cy] = [0.5 * (width - 1), 0.5 * (height - 1)];
  const unit = 0.5 * Math.min(width, height);
  const metal = seededRandom(piece.seed + 5); // the metal belongs to the piece, not to the photograph
  const [wave, phase, rim] = [2 * Math.PI / (unit * metal.between(0.13, 0.21)), metal.between(0, 6), unit * metal.between(0.9, 0.99)];
  const random = seededRandom(seed * 7919 + piece.seed);

  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [ux, uy] = [x - cx - shift.dx, y - cy - shift.dy];
      const [px, py] = [cos * ux + sin * uy, cos * uy - sin * ux];
      const plate = edge(rim - Math.sqrt(px * px + py * py), blur) * METAL[light] * (1 + 0.5 * Math.sin(wave * px + phase) * Math.sin(0.83 * wave * py + 2 * phase));
      const at = 3 * (y * width + x);
      for (let c = 0; c < 3; c++) scene[at + c] = haze[c]! + plate;
    }
  }
  piece.stones.forEach((stone, index) => drawStone(index, stone));
  return expose();

  function drawStone(index: number, stone: SimulatedStone): void {
    const [sx, sy] = [stone.x - cx, stone.y - cy];
    const [mx, my] = [cx + shift.dx + cos * sx - sin * sy, cy + shift.dy + sin * sx + cos * sy];
    const reach = stone.radius + 2 * blur;
    const colour = stoneLight(stone, light);
    for (let y = Math.max(0, Math.ceil(my - reach)); y <= Math.min(height - 1, my + reach); y++) {
      for (let x = Math.max(0, Math.ceil(mx - reach)); x <= Math.min(width - 1, mx + reach); x++) {
        const distance = Math.sqrt((x - mx) ** 2 + (y - my) ** 2);
        const share = edge(stone.radius - distance, blur);
        if (share === 0) continue;
        const shine = share * facets(Math.atan2(y - my, x - mx) - turn, distance / stone.radius, index);
        const at = 3 * (y * width + x);
        for (let c = 0; c < 3; c++) scene[at + c] = scene[at + c]! + shine * colour[c]!;
      }
    }
  }

  function expose(): Photograph {
    const most = bits === 8 ? 255 : 65535;
    const out = bits === 8 ? new Uint8Array(scene.length) : new Uint16Array(scene.length);
    const noises = Float32Array.from({ length: NOISE_LENGTH }, () => random.normal());
    for (let i = 0, at = 0; i < scene.length; i++) {
      // A long table walked from a new place for every stretch: as good as fresh numbers here, and much faster.
      if (i % 3001 === 0) at = random.below(NOISE_LENGTH - 3001);
      const signal = gain * scene[i]!;
      const value = signal + noises[at++]! * Math.sqrt(noise.read ** 2 + noise.shot * signal);
      out[i] = most * ENCODED[Math.round(ENCODE_STEPS * Math.sqrt(Math.max(0, Math.min(1, value))))]! + 0.5;
    }
    return { width, height, most, data: out };
  }
}
