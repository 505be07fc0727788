import { ok, type Result } from '../result.ts';
import { refusal } from './refusal.ts';
import type { ReadError, ReadWarning } from './spectrum-file.ts';

/**
 * A curve's x must run one way. `lineOf` gives the line of a point. Equal neighbours are kept and told;
 * a turn means that two scans were glued together or a line was damaged, and refuses the file.
 */
export function checkAxis(x: Float64Array, lineOf: (point: number) => number): Result<readonly ReadWarning[], ReadError> {
  let direction = 0;
  let equal = 0;
  let firstEqual = 0;
  for (let i = 1; i < x.length; i += 1) {
    const step = Math.sign(x[i]! - x[i - 1]!);
    if (step === 0) {
      if (equal === 0) firstEqual = i;
      equal += 1;
    } else if (direction === 0) direction = step;
    else if (step !== direction) {
      return refusal('axis-turns', `the abscissa turns back here (${x[i - 1]} is followed by ${x[i]}), as if two scans were joined or a line was damaged. Export each scan as a file of its own.`, lineOf(i));
    }
  }
  if (direction === 0) return refusal('axis-constant', 'all points have the same abscissa. Export the spectrum again with its axis.', lineOf(0));
  if (equal === 0) return ok([]);
  const times = equal === 1 ? 'One abscissa is' : `${equal} abscissae are`;
  return ok([{ code: 'x-repeated', message: `${times} written twice (first ${x[firstEqual]}); all points were kept.`, line: lineOf(firstEqual) }]);
}
