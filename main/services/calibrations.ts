import type { Failure } from '../../app/contract/failure.ts';
import type { OperationName, ParsedInput } from '../../app/contract/index.ts';
import { calibrationWords, errorOfUse } from '../../app/calibration/calibration-words.ts';
import { ok, type Result } from '../../app/result.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { CalibrateOutcome } from '../workers/tasks/calibrate-scale.ts';
import { notFound } from './failures.ts';
import { ownedFloats } from './owned-bytes.ts';
import type { Services } from './service.ts';
import { asFailure, changing, reading, type Work, type WorkDeps } from './work-context.ts';

type CalibrationServices = Pick<Services, 'instruments.tryCalibration' | 'instruments.calibrate' | 'instruments.calibrations'>;
type LampFile = Pick<ParsedInput<'instruments.tryCalibration'>, 'instrumentId' | 'name' | 'bytes' | 'xUnit' | 'standard' | 'ownLines'>;

/** Fits the scale in a worker thread; the unit that the instrument remembers stands where the file says none. */
async function fitLamp(work: Work, _operation: OperationName, file: LampFile): Promise<Result<Extract<CalibrateOutcome, { ok: true }>['value'], Failure>> {
  const instrument = await work.stores.instruments.get(file.instrumentId, work.at);
  if (instrument === null) return notFound('This instrument');
  const { name, bytes, standard, ownLines } = file;
  const xUnit = file.xUnit ?? instrument.remembers.xUnit;
  const task = await work.pool.run('calibrate-scale', { name, bytes, standard, ownLines, ...(xUnit === undefined ? {} : { xUnit }) }, { signal: work.call.signal });
  if (!task.ok) return taskFailure(task.error);
  if (task.value.ok) return task.value;
  return asFailure({ code: 'refused', message: task.value.error.message, next: 'Choose the standard that was used and the file of its curve; nothing was kept.' });
}

export function createCalibrationServices(deps: WorkDeps): CalibrationServices {
  return {
    'instruments.tryCalibration': reading(deps, 'instruments.tryCalibration', async (input, work) => {
      const fitted = await fitLamp(work, 'instruments.tryCalibration', input);
      if (!fitted.ok) return fitted;
      const { sha256, standardName, fit, unassigned, warnings, x, y } = fitted.value;
      return ok({ sha256, standard: standardName, fit, unassigned: [...unassigned], warnings: [...warnings], x: ownedFloats(x), y: ownedFloats(y) });
    }),

    'instruments.calibrate': changing(deps, 'instruments.calibrate', async (input, work) => {
      const fitted = await fitLamp(work, 'instruments.calibrate', input);
      if (!fitted.ok) return fitted;
      const { sha256, standardName, fit } = fitted.value;
      const { instrumentId, use, passed, name } = input;
      const kept = await work.stores.calibrations.keep(work.change, {
        instrumentId, use, passed, fit, standard: standardName, error: errorOfUse(fit, use), fileName: name, fileSha256: sha256,
        reference: `${standardName}, “${name}”`.slice(0, 200), outcome: calibrationWords(fit, use),
      });
      return kept === null ? notFound('This instrument') : ok(kept);
    }),

    'instruments.calibrations': reading(deps, 'instruments.calibrations', async (input, { stores, at }) => ok(await stores.calibrations.list(input.instrumentId, at))),
  };
}
