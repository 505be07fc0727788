import type { RunView } from '../../app/contract/work.ts';
import { METHOD_IDS, METHODS, type MethodId } from '../../app/domain/method.ts';
import { isPossible, type StoneSetting } from '../../app/evidence/possible-methods.ts';

export type MethodAdvice = {
  readonly method: MethodId;
  /** Runs of this method so far, by their numbers. */
  readonly done: readonly string[];
  /** Why it can't be done on this stone, or null where it can. */
  readonly impossible: string | null;
};

function whyNot(method: MethodId, stone: StoneSetting): string | null {
  if (isPossible(method, stone)) return null;
  if (METHODS[method].possibleMounted === 'no') return 'not on a mounted stone: the metal would decide';
  return stone.setting === 'closed-back' ? 'needs light through the stone; the setting is closed' : 'needs light through the stone; the setting is not stated as open';
}

/** Every method in the house's order: how often it was done on this stone, and whether it can be. */
export function adviseMethods(stone: StoneSetting, runs: readonly Pick<RunView, 'method' | 'number'>[]): MethodAdvice[] {
  return METHOD_IDS.map((method) => ({
    method, impossible: whyNot(method, stone),
    done: runs.filter((run) => run.method === method).map((run) => run.number),
  }));
}

/** What should be said before one lamp is used, in view of what was seen already; null where nothing should. */
export function orderHint(method: MethodId, runs: readonly Pick<RunView, 'method' | 'number'>[]): string | null {
  const done = (wanted: MethodId): boolean => runs.some((run) => run.method === wanted);
  if (method === 'fluorescence-short-wave' && !done('fluorescence-long-wave')) return 'Long-wave belongs first: short-wave light can leave an after-glow that adds to what is seen later.';
  if (method === 'fluorescence-long-wave' && (done('fluorescence-short-wave') || done('phosphorescence'))) return 'Short-wave light was used before: let the stone rest in the dark for some minutes, or an after-glow adds to what is seen.';
  return null;
}
