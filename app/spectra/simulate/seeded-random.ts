/** A stream of pseudo-random numbers that one seed fixes. */
export type SeededRandom = {
  /** Uniform in [0, 1). */
  readonly uniform: () => number;
  /** Uniform between the two. */
  readonly between: (from: number, to: number) => number;
  /** Uniform in the logarithm between the two, both positive. */
  readonly logBetween: (from: number, to: number) => number;
  /** Normal with mean 0 and standard deviation 1. */
  readonly normal: () => number;
  /** Whole number from 0 to below n. */
  readonly below: (n: number) => number;
};

/** xoshiro128** (D. Blackman, S. Vigna, 2018; public domain), seeded through splitmix32 so that neighbouring seeds differ. */
export function seededRandom(seed: number): SeededRandom {
  let mix = Math.trunc(seed) | 0;
  const next32 = (): number => {
    mix = (mix + 0x9e3779b9) | 0;
    let z = mix;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  };
  const s = new Uint32Array([next32(), next32(), next32(), next32() | 1]);
  const rotate = (x: number, k: number): number => ((x << k) | (x >>> (32 - k))) >>> 0;
  const uint = (): number => {
    const result = Math.imul(rotate(Math.imul(s[1]!, 5), 7), 9) >>> 0;
    const t = s[1]! << 9;
    s[2]! ^= s[0]!;
    s[3]! ^= s[1]!;
    s[1]! ^= s[2]!;
    s[0]! ^= s[3]!;
    s[2]! ^= t;
    s[3] = rotate(s[3]!, 11);
    return result;
  };
  const uniform = (): number => (uint() * 2097152 + (uint() >>> 11)) / 9007199254740992;
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return {
    uniform, normal,
    between: (from, to) => from + (to - from) * uniform(),
    logBetween: (from, to) => from * (to / from) ** uniform(),
    below: (n) => Math.floor(n * uniform()),
  };
}
