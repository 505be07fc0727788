import { createHash } from 'node:crypto';
import { findLaser, type FoundLaser, type LaserSearch } from '../../../app/calibration/find-laser.ts';
import { ok, type Result } from '../../../app/result.ts';
import type { StatableXUnit } from '../../../app/spectra/spectrum.ts';
import { readOneCurve } from '../read-one-curve.ts';
import type { Task } from '../task.ts';

export type FindLaserPayload = { readonly name: string; readonly bytes: Uint8Array; readonly xUnit?: StatableXUnit; readonly search: LaserSearch };
export type FindLaserOutcome = Result<{ readonly laser: FoundLaser; readonly sha256: string }, { readonly code: string; readonly message: string }>;

/** Reads the curve of a known diamond and finds the laser that it was recorded with. */
export const findLaserTask: Task<FindLaserPayload, FindLaserOutcome> = {
  run({ name, bytes, xUnit, search }) {
    const read = readOneCurve(name, bytes, xUnit);
    if (!read.ok) return read;
    const laser = findLaser(read.value.block, search);
    return laser.ok ? ok({ laser: laser.value, sha256: createHash('sha256').update(bytes).digest('hex') }) : laser;
  },
};
