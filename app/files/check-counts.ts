import { ok, type Result } from '../result.ts';
import type { HeaderNumber } from './jcamp-header.ts';
import { CHECK_TOLERANCES } from './reader-defaults.ts';
import { refusal } from './refusal.ts';
import type { ReadError, ReadWarning } from './spectrum-file.ts';

/**
 * Compares the number of points found with the number the header gives. `complete` is true where the file ends as it should
 * (an END record); without it one missing point is all that is believed. `line` is the last line of data.
 * Errors: 'cut-off', 'too-many-points'. Warnings: 'npoints', 'npoints-missing'.
 */
export function checkCounts(said: HeaderNumber | undefined, found: number, complete: boolean, line: number): Result<readonly ReadWarning[], ReadError> {
  if (!said) return ok([{ code: 'npoints-missing', message: 'The file does not say how many points it has, so their number could not be checked.' }]);
  const missing = said.value - found;
  if (missing === 0) return ok([]);
  const allowed = Math.max(1, Math.floor(CHECK_TOLERANCES.countShare * said.value));
  if (missing > (complete ? allowed : 1)) {
    const reason = complete ? `the table ends here and holds only ${found} of ${said.value} points: lines were lost.` : `the data end here after ${found} of ${said.value} points: the file was cut off.`;
    return refusal('cut-off', `${reason} Copy or export it again.`, line);
  }
  if (-missing > allowed) {
    return refusal('too-many-points', `the table holds ${found} points where ##NPOINTS says ${said.value}: lines were added or the header belongs to another file. Export it again.`, line);
  }
  return ok([{ code: 'npoints', message: `##NPOINTS says ${said.value}, the table holds ${found}.`, line: said.line }]);
}
