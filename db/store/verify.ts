import type { Verification } from '../../app/contract/casebook.ts';
import { aTurn } from '../a-turn.ts';
import type { StoreHandle } from '../handle.ts';
import { NOTHING_OUTSIDE, type Outside } from '../verify/checkpoints.ts';
import { VerifyCancelled, type Pace } from '../verify/part.ts';
import { countPiece } from '../verify/layout.ts';
import { runInTurn } from '../verify/pieces.ts';
import { verifyCasebook } from '../verify/verify-casebook.ts';

export type VerifyOptions = {
  /** UTC, ISO 8601 with milliseconds: stands on the outcome. */
  readonly at: string;
  /** What is known of the ledgers from outside the file. */
  readonly outside?: Outside;
  /** The casebook was opened unchecked: what belongs to none of its tables is looked at too. */
  readonly wholeFile?: boolean;
  readonly signal?: AbortSignal;
  /** Called as work goes on, with what was checked so far and what there is. */
  readonly progress?: (done: number, total: number) => void;
  /** Called where helpers were asked and could not do it: it begins anew without them. */
  readonly alone?: () => void;
};

export type VerifyStore = {
  /**
   * Recomputes everything a casebook vouches for on the calling thread, in slices that leave the window free, but for SQLite's check of
   * a table. Null where it was stopped by the signal.
   */
  verify(options: VerifyOptions): Promise<Verification | null>;
};

/** Longest stretch without letting anything else run. */
const BREATH_MS = 12;

function paced(options: VerifyOptions, total: number): Pace {
  let done = 0;
  let breathed = performance.now();
  return async (more) => {
    done += more;
    if (performance.now() - breathed < BREATH_MS) return;
    options.progress?.(Math.min(done, total), total);
    await aTurn();
    breathed = performance.now();
    if (options.signal?.aborted) throw new VerifyCancelled();
  };
}

/** What the opening of the casebook knows of it. */
export type AtOpening = { readonly guardsRestored: readonly string[]; strange(): readonly string[] };

export function createVerifyStore(handle: StoreHandle, { guardsRestored, strange }: AtOpening): VerifyStore {
  const db = handle.read;
  return {
    async verify(options) {
      if (options.signal?.aborted) return null;
      const pace = paced(options, countPiece(db));
      return verifyCasebook({ at: options.at, outside: options.outside ?? NOTHING_OUTSIDE, guardsRestored, strange: strange(), wholeFile: options.wholeFile ?? false }, runInTurn(db, pace));
    },
  };
}
