import { METHOD_IDS, METHODS } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';

export type StoneSetting = {
  readonly mounted: boolean;
  readonly setting: 'open-back' | 'closed-back' | null;
  /** Weight, ct, where it is known; small stones don't allow every test. */
  readonly weightCt?: number | null;
};

/**
 * Least weight for a test to be worth doing, ct: light path of 1 to 2 mm, a table for the probe, balance and magnet (common practice,
 * no source; a round of 1 mm weighs about 0.005 ct, of 1.5 mm 0.015 ct, of 2 mm 0.03 ct).
 */
const LEAST_CARAT: Readonly<Partial<Record<MethodId, number>>> = {
  absorption: 0.03, infrared: 0.015, 'ultraviolet-transmission': 0.01, 'growth-pattern': 0.004, 'crossed-polarisers': 0.004,
  'thermal-probe': 0.03, 'electrical-conductivity': 0.03, magnet: 0.05, 'specific-gravity': 0.2, 'refractive-index': 0.05,
};

/** Is the stone too small for this test? Not where its weight is not known. */
export const isTooSmall = (method: MethodId, { weightCt }: StoneSetting): boolean => weightCt !== undefined && weightCt !== null && weightCt < (LEAST_CARAT[method] ?? 0);

/** Does the setting forbid this test? A mounted stone whose setting is not stated is taken as closed. */
export function isBarred(method: MethodId, stone: StoneSetting): boolean {
  if (!stone.mounted) return false;
  const when = METHODS[method].possibleMounted;
  return !(when === 'yes' || (when === 'open-back' && stone.setting === 'open-back'));
}

/** Can this stone be given this test? */
export const isPossible = (method: MethodId, stone: StoneSetting): boolean => !isBarred(method, stone) && !isTooSmall(method, stone);

/** Methods of the list, in its order, that this stone's setting forbids. */
export const barredMethods = (stone: StoneSetting): MethodId[] => METHOD_IDS.filter((method) => isBarred(method, stone));
