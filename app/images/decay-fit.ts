import { z } from 'zod';
import { FIT_DEFAULTS, levenbergMarquardt, type Fit, type Model } from '../spectra/levenberg-marquardt.ts';

/** One brightness of a fading glow. */
export type DecayPoint = { readonly seconds: number; readonly brightness: number };

const term = z.object({
  /** Brightness at time zero, in the unit of the points. */
  amplitude: z.number(),
  /** Time in which it falls to 1/e, s, with its standard error. */
  lifetime: z.number(), lifetimeError: z.number(),
});

export const decayFit = z.object({
  /** One exponential or the sum of two, the shorter first. */
  terms: z.array(term).min(1).max(2),
  /** Root mean square of what is left, in the unit of the points. */
  residual: z.number(),
});
export type DecayFit = z.infer<typeof decayFit>;

/** Points needed for one exponential and for two: one more than parameters, so that an error can be given. */
export const LEAST_POINTS = 3;
const LEAST_FOR_TWO = 6;
/** Two exponentials must beat one by this much in the corrected Akaike criterion (Burnham & Anderson 2002: 10 leaves no support for the other). */
const CLEARLY_BETTER = 10;
/** Two lifetimes nearer than this factor can't be told apart (judgement). */
const LEAST_APART = 2;

/** Sum of exponentials; amplitudes and lifetimes as logarithms, so that they stay positive. */
const sumOf = (count: number): Model => (t, p, gradient) => {
  let total = 0;
  for (let k = 0; k < count; k++) {
    const value = Math.exp(p[2 * k]! - t / Math.exp(p[2 * k + 1]!));
    gradient[2 * k] = value;
    gradient[2 * k + 1] = value * (t / Math.exp(p[2 * k + 1]!));
    total += value;
  }
  return total;
};

/** Akaike's criterion with the correction for few points, up to a constant. */
const criterion = ({ rss }: Fit, n: number, parameters: number): number => {
  const k = parameters + 1;
  return n * Math.log(Math.max(rss, Number.MIN_VALUE) / n) + 2 * k + (2 * k * (k + 1)) / Math.max(1e-9, n - k - 1);
};

/** A straight line through the logarithms, for a start. */
function start(points: readonly DecayPoint[]): { amplitude: number; lifetime: number } {
  const seen = points.filter(({ brightness }) => brightness > 0);
  const n = seen.length;
  const mt = seen.reduce((sum, { seconds }) => sum + seconds, 0) / n;
  const ml = seen.reduce((sum, { brightness }) => sum + Math.log(brightness), 0) / n;
  let [top, below] = [0, 0];
  for (const { seconds, brightness } of seen) { top += (seconds - mt) * (Math.log(brightness) - ml); below += (seconds - mt) ** 2; }
  const lifetime = below > 0 && top < 0 ? -below / top : Math.max(1e-3, seen.at(-1)!.seconds - seen[0]!.seconds);
  return { amplitude: Math.exp(ml + mt / lifetime), lifetime };
}

function fitTerms(points: readonly DecayPoint[], from: readonly { amplitude: number; lifetime: number }[]): Fit {
  const t = Float64Array.from(points, ({ seconds }) => seconds);
  const y = Float64Array.from(points, ({ brightness }) => brightness);
  const p = from.flatMap(({ amplitude, lifetime }) => [Math.log(amplitude), Math.log(lifetime)]);
  return levenbergMarquardt(t, y, sumOf(from.length), p, { ...FIT_DEFAULTS, gainTolerance: 1e-13 });
}

function read({ parameters, errors, rss }: Fit, n: number): DecayFit | null {
  const terms = Array.from({ length: parameters.length / 2 }, (_, k) => {
    const lifetime = Math.exp(parameters[2 * k + 1]!);
    return { amplitude: Math.exp(parameters[2 * k]!), lifetime, lifetimeError: lifetime * errors[2 * k + 1]! };
  }).sort((a, b) => a.lifetime - b.lifetime);
  return terms.every((one) => Number.isFinite(one.lifetime) && Number.isFinite(one.lifetimeError)) ? { terms, residual: Math.sqrt(rss / n) } : null;
}

/**
 * Lifetimes of a fading glow by least squares: one exponential, or two where two explain the points clearly better.
 * Null where fewer than three points are above zero or the points do not fade.
 * @param points times after the lamp went off, s, ascending; brightness with the stray light taken off
 */
export function fitDecay(points: readonly DecayPoint[]): DecayFit | null {
  if (points.filter(({ brightness }) => brightness > 0).length < LEAST_POINTS || points.at(-1)!.brightness >= points[0]!.brightness) return null;
  const n = points.length;
  const first = start(points);
  const one = fitTerms(points, [first]);
  const single = read(one, n);
  if (n < LEAST_FOR_TWO) return single;
  const two = fitTerms(points, [{ amplitude: 0.6 * first.amplitude, lifetime: 0.4 * first.lifetime }, { amplitude: 0.4 * first.amplitude, lifetime: 2.5 * first.lifetime }]);
  const double = read(two, n);
  if (double === null || single === null) return double ?? single;
  const better = criterion(one, n, 2) - criterion(two, n, 4) > CLEARLY_BETTER;
  const [short, long] = double.terms;
  const apart = long!.lifetime > LEAST_APART * short!.lifetime && short!.lifetimeError < short!.lifetime && long!.lifetimeError < long!.lifetime;
  return better && apart ? double : single;
}
