import { ok, type Result } from '../result.ts';
import { refusal } from './refusal.ts';
import type { ReadError, ReadWarning } from './spectrum-file.ts';

/** Fewer points than this say nothing about how even an axis is. */
const LEAST_POINTS = 20;
/** On an axis whose other steps stay below so many usual ones … */
const EVEN_STEPS = 2.5;
/** … one step of this many is a hole. */
const HOLE_STEPS = 5;

/** One hole in an axis that is even otherwise: rows were lost, or the instrument changed its grating there. */
function gapWarning(x: Float64Array, lineOf: (point: number) => number): readonly ReadWarning[] {
  if (x.length < LEAST_POINTS) return [];
  const steps = Float64Array.from({ length: x.length - 1 }, (_, i) => Math.abs(x[i + 1]! - x[i]!));
  const usual = Float64Array.from(steps).sort()[steps.length >> 1]!;
  if (usual === 0) return [];
  let at = -1;
  for (let i = 0; i < steps.length; i += 1) {
    if (steps[i]! <= EVEN_STEPS * usual) continue;
    if (at >= 0 || steps[i]! < HOLE_STEPS * usual) return [];
    at = i;
  }
  if (at < 0) return [];
  return [{ code: 'gap', message: `Between ${x[at]} and ${x[at + 1]} about ${Math.round(steps[at]! / usual) - 1} points are missing: rows may have been lost. Compare with the instrument.`, line: lineOf(at + 1) }];
}

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
  const gap = gapWarning(x, lineOf);
  if (equal === 0) return ok(gap);
  const times = equal === 1 ? 'One abscissa is' : `${equal} abscissae are`;
  return ok([...gap, { code: 'x-repeated', message: `${times} written twice (first ${x[firstEqual]}); all points were kept.`, line: lineOf(firstEqual) }]);
}
