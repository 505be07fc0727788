import type { ScaleFit } from '../../app/calibration/scale-fit.ts';
import type { ScaleUse } from '../../app/calibration/calibration-words.ts';
import type { Change } from '../change.ts';
import type { StoreHandle } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { calibration, instrumentCheck } from '../schema/index.ts';
import { calibrationAt, calibrationsUpTo, type KeptCalibration } from './calibrations-read.ts';
import { instrumentAt } from './instruments.ts';

export type CalibrationInput = {
  readonly instrumentId: string; readonly standard: string; readonly fit: ScaleFit; readonly use: ScaleUse; readonly error: number;
  readonly fileName: string; readonly fileSha256: string; readonly passed: boolean; readonly reference: string; readonly outcome: string;
};
export type CalibrationsStore = {
  /** All of an instrument, newest first. */
  list(instrumentId: string, at: string): Promise<KeptCalibration[]>;
  current(instrumentId: string, at: string): Promise<KeptCalibration | null>;
  /** Keeps a calibration and the check it counts as, in one transaction; null where there is no such instrument. */
  keep(change: Change, input: CalibrationInput): Promise<KeptCalibration | null>;
};

export function createCalibrationsStore(handle: StoreHandle, newId: () => string): CalibrationsStore {
  return {
    async list(instrumentId, at) { return calibrationsUpTo(handle.read, instrumentId, at); },
    async current(instrumentId, at) { return calibrationAt(handle.read, instrumentId, at); },
    keep: (change, input) => handle.transact((tx) => {
      if (change.personId === null) throw new Error('keep: a calibration needs a person');
      const { instrumentId, standard, fit, use, error, fileName, fileSha256, passed, reference, outcome } = input;
      if (instrumentAt(tx, instrumentId, change.at) === null) return null;
      const checkId = newId();
      tx.orm.insert(instrumentCheck).values({ id: checkId, instrumentId, at: change.at, personId: change.personId, passed, reference, outcome }).run();
      tx.orm.insert(calibration).values({
        id: newId(), instrumentId, at: change.at, personId: change.personId, checkId, standard, unit: fit.unit, use, error, fileName, fileSha256, fit: JSON.stringify(fit),
      }).run();
      appendAudit(tx, change, { subject: instrumentId, caseId: null, content: { standard, use, error, fileName, fileSha256, passed, reference, outcome } });
      return calibrationAt(tx, instrumentId, change.at);
    }),
  };
}
