import { scaleFit, type ScaleFit } from '../../app/calibration/scale-fit.ts';
import type { ScaleUse } from '../../app/calibration/calibration-words.ts';
import type { ScaleView } from '../../app/contract/calibration.ts';
import type { ReadDb, WriteTx } from '../handle.ts';

export type KeptCalibration = ScaleView & { readonly fit: ScaleFit };

type Row = { id: string; at: string; by: string; standard: string; unit: string; use: string; error: number; file_name: string; file_sha256: string; fit: string };

const NEWEST_FIRST = `
  SELECT c.id, c.at, p.name AS by, c.standard, c.unit, c.use, c.error, c.file_name, c.file_sha256, c.fit
  FROM calibration c JOIN person p ON p.id = c.person_id
  WHERE c.instrument_id = @instrumentId AND c.at <= @at ORDER BY c.at DESC, c.rowid DESC`;

const viewOf = (row: Row): KeptCalibration => ({
  id: row.id, at: row.at, by: row.by, standard: row.standard, unit: row.unit as ScaleView['unit'], use: row.use as ScaleUse, error: row.error,
  fileName: row.file_name, fileSha256: row.file_sha256, fit: scaleFit.parse(JSON.parse(row.fit)),
});

/** The calibration that governs an instrument's runs at an instant, or null where there is none. */
export function calibrationAt(db: ReadDb | WriteTx, instrumentId: string, at: string): KeptCalibration | null {
  const row = db.get<Row>(`${NEWEST_FIRST} LIMIT 1`, { instrumentId, at });
  return row === undefined ? null : viewOf(row);
}

/** All calibrations of an instrument up to an instant, newest first. */
export const calibrationsUpTo = (db: ReadDb, instrumentId: string, at: string): KeptCalibration[] => db.all<Row>(NEWEST_FIRST, { instrumentId, at }).map(viewOf);
