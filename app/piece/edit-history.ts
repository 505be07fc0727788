/** Steps back at most: each holds its marks, and nobody walks back further. */
const MOST_STEPS = 200;

/** A value with the ones before it and the ones that were taken back. */
export type EditHistory<T> = { readonly past: readonly T[]; readonly now: T; readonly future: readonly T[] };

export const beginHistory = <T>(now: T): EditHistory<T> => ({ past: [], now, future: [] });

/** A further value; what had been taken back is gone. `merge` replaces the last value: one drag is one step. */
export function stepOn<T>(history: EditHistory<T>, now: T, merge = false): EditHistory<T> {
  if (now === history.now) return history;
  return { past: merge ? history.past : [...history.past, history.now].slice(-MOST_STEPS), now, future: [] };
}

export function undo<T>(history: EditHistory<T>): EditHistory<T> {
  const before = history.past.at(-1);
  return before === undefined ? history : { past: history.past.slice(0, -1), now: before, future: [history.now, ...history.future] };
}

export function redo<T>(history: EditHistory<T>): EditHistory<T> {
  const [next, ...rest] = history.future;
  return next === undefined ? history : { past: [...history.past, history.now], now: next, future: rest };
}
