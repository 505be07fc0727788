/** How long one must wait after wrong attempts, ms. Common practice, no source: two slips are free, then each doubles the wait, up to five minutes. */
export const FAILURE_DELAY = { free: 2, first: 2_000, longest: 300_000 } as const;

/** Milliseconds that still have to pass after `failures` wrong attempts in a row, the last `sinceMs` ago. A clock that was put back does not lock anyone out. */
export function waitAfterFailures(failures: number, sinceMs: number): number {
  if (failures <= FAILURE_DELAY.free) return 0;
  const delay = Math.min(FAILURE_DELAY.longest, FAILURE_DELAY.first * 2 ** (failures - FAILURE_DELAY.free - 1));
  return Math.max(0, delay - Math.abs(sinceMs));
}
