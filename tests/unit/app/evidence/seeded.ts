/** A seeded generator with what made-up stones need. Mulberry32, 0 to 1. */
export type Dice = { readonly next: () => number; readonly chance: (p: number) => boolean; readonly pick: <T>(list: readonly T[]) => T; readonly shuffled: <T>(list: readonly T[]) => T[] };

export function dice(seed: number): Dice {
  let a = seed >>> 0;
  const next = (): number => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    next,
    chance: (p) => next() < p,
    pick: (list) => list[Math.floor(next() * list.length)]!,
    shuffled: (list) => {
      const out = [...list];
      for (let i = out.length - 1; i > 0; i--) {
        const j = Math.floor(next() * (i + 1));
        [out[i], out[j]] = [out[j]!, out[i]!];
      }
      return out;
    },
  };
}
