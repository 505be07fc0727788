import { seededRandom } from '../../spectra/simulate/seeded-random.ts';

/** Linear light in R, G, B; 1 fills the sensor at the exposure of the photograph. */
export type Light = readonly [number, number, number];

/** An invented stone. Positions in points of the unturned photograph, centre of the first point at 0. */
export type SimulatedStone = { readonly x: number; readonly y: number; readonly radius: number; readonly longWave: Light; readonly shortWave: Light };

/** An invented piece of jewellery: stones in rings on a dim plate of metal. No such piece exists. */
export type SimulatedPiece = { readonly width: number; readonly height: number; readonly stones: readonly SimulatedStone[]; readonly seed: number };

export type PieceOptions = {
  readonly width: number; readonly height: number; readonly count: number; readonly seed: number;
  /** Short-wave over long-wave brightness of an ordinary stone. */
  readonly ratio?: number;
  /** Natural spread of the ratio, standard deviation of its logarithm. */
  readonly spread?: number;
  /** Stones (by index) whose ratio is another, with that ratio. */
  readonly odd?: Readonly<Record<number, number>>;
};

/** Colours as shares of the brightness, mean 1: blue glow and orange glow (invented). */
const BLUE: Light = [0.35, 0.75, 1.9];
const ORANGE: Light = [1.75, 0.9, 0.35];

const lit = (colour: Light, brightness: number): Light => [colour[0] * brightness, colour[1] * brightness, colour[2] * brightness];

/** Places `count` stones in rings about the centre, none touching, with the ratios asked for. */
export function simulatedPiece({ width, height, count, seed, ratio = 0.4, spread = 0.08, odd = {} }: PieceOptions): SimulatedPiece {
  const random = seededRandom(seed);
  const unit = Math.min(width, height);
  const perRing = [1, 7, 13, 19, 25, 31, 37];
  const rings = perRing.findIndex((_, ring) => perRing.slice(0, ring + 1).reduce((sum, n) => sum + n, 0) >= count);
  const gap = 0.46 * unit / (Math.max(1, rings) + 0.6);
  const stones: SimulatedStone[] = [];
  perRing.forEach((most, ring) => {
    const places = Math.min(most, count - stones.length);
    for (let i = 0; i < places; i++) {
      const angle = 2 * Math.PI * (i + 0.37 * ring) / places;
      const long = random.logBetween(0.06, 0.16);
      const own = odd[stones.length];
      const short = long * (own ?? ratio * Math.exp(spread * random.normal()));
      stones.push({
        x: 0.5 * (width - 1) + ring * gap * Math.cos(angle), y: 0.5 * (height - 1) + ring * gap * Math.sin(angle), radius: gap * random.between(0.3, 0.36),
        longWave: lit(BLUE, long), shortWave: lit(own === undefined ? BLUE : ORANGE, short),
      });
    }
  });
  return { width, height, stones, seed };
}
