import { createHash } from 'node:crypto';
import { calibrateScale, type Calibrated } from '../../../app/calibration/calibrate-scale.ts';
import { calibrationStandard, withOwnLines } from '../../../app/calibration/standards.ts';
import type { ReadWarning } from '../../../app/files/spectrum-file.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import type { StatableXUnit } from '../../../app/spectra/spectrum.ts';
import { readOneCurve } from '../read-one-curve.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

export type CalibratePayload = {
  readonly name: string; readonly bytes: Uint8Array; readonly xUnit?: StatableXUnit; readonly standard: string;
  readonly ownLines: readonly { readonly position: number; readonly uncertainty: number }[] | null;
};
export type CalibrateOutcome = Result<Calibrated & { readonly sha256: string; readonly standardName: string; readonly warnings: readonly ReadWarning[] }, { readonly code: string; readonly message: string }>;

function calibrate({ name, bytes, xUnit, standard: standardId, ownLines }: CalibratePayload): CalibrateOutcome {
  const tabulated = calibrationStandard(standardId);
  if (!tabulated) return err({ code: 'standard-unknown', message: 'This lamp or standard is not in the table: choose another.' });
  const read = readOneCurve(name, bytes, xUnit);
  if (!read.ok) return read;
  const outcome = calibrateScale(read.value.block, ownLines === null ? tabulated : withOwnLines(tabulated, ownLines));
  if (!outcome.ok) return outcome;
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return ok({ ...outcome.value, sha256, standardName: ownLines === null ? tabulated.name : `${tabulated.name}, own positions`, warnings: read.value.warnings });
}

/** Reads the curve of a lamp or a standard and fits the scale of the instrument that recorded it. */
export const calibrateScaleTask: Task<CalibratePayload, CalibrateOutcome> = {
  run: calibrate,
  transfers: (outcome) => outcome.ok ? buffersOf([outcome.value.x, outcome.value.y]) : [],
};
