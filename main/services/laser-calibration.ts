import { errorInNm } from '../../app/calibration/scale-of-run.ts';
import { laserWords } from '../../app/calibration/laser-words.ts';
import { scaleMap } from '../../app/calibration/scale-fit.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Output, ParsedInput } from '../../app/contract/index.ts';
import { ok, type Result } from '../../app/result.ts';
import { analysisParameters } from '../../app/spectra/analysis.ts';
import { taskFailure } from '../workers/task-failure.ts';
import { notFound } from './failures.ts';
import type { Services } from './service.ts';
import { asFailure, changing, reading, type Work, type WorkDeps } from './work-context.ts';

/** How far a scale may be off that was never calibrated, nm: what every analysis assumes. */
const UNCALIBRATED_NM = analysisParameters.shape.calibrationErrorNm.parse(undefined);

/** Finds the laser in a worker thread, on the scale that governs the instrument's runs. */
async function tryLaser(work: Work, input: ParsedInput<'instruments.tryLaser'>): Promise<Result<Output<'instruments.tryLaser'>, Failure>> {
  const instrument = await work.stores.instruments.get(input.instrumentId, work.at);
  if (instrument === null) return notFound('This instrument');
  const { name, bytes, nominalNm } = input;
  const scale = await work.stores.calibrations.current(instrument.id, work.at);
  const xUnit = input.xUnit ?? instrument.remembers.xUnit;
  const search = {
    nominalNm, scaleErrorNm: (scale === null ? null : errorInNm(scale.unit, scale.error, nominalNm)) ?? UNCALIBRATED_NM,
    ...(scale?.use === 'correct' && scale.unit === 'nm' ? { scale: { calibrationId: scale.id, at: scale.at, fit: scaleMap.parse(scale.fit) } } : {}),
  };
  const task = await work.pool.run('find-laser', { name, bytes, search, ...(xUnit === undefined ? {} : { xUnit }) }, { signal: work.call.signal });
  if (!task.ok) return taskFailure(task.error);
  if (!task.value.ok) return asFailure({ code: 'refused', message: task.value.error.message, next: 'Nothing was kept; try another curve.' });
  const { laser, sha256 } = task.value.value;
  return ok({ ...laser, sha256, words: laserWords(laser, nominalNm), scaled: scale !== null });
}

export function createLaserServices(deps: WorkDeps): Pick<Services, 'instruments.tryLaser' | 'instruments.calibrateLaser'> {
  return {
    'instruments.tryLaser': reading(deps, 'instruments.tryLaser', (input, work) => tryLaser(work, input)),

    'instruments.calibrateLaser': changing(deps, 'instruments.calibrateLaser', async (input, work) => {
      const tried = await tryLaser(work, input);
      if (!tried.ok) return tried;
      const { laserNm, uncertaintyNm, foundNm, sha256, words } = tried.value;
      const kept = await work.stores.instruments.keepLaser(work.change, {
        instrumentId: input.instrumentId, laserNm: Number(laserNm.toFixed(3)), uncertaintyNm, foundNm, nominalNm: input.nominalNm, fileName: input.name, fileSha256: sha256,
        passed: input.passed, reference: `Raman line of a known diamond, “${input.name}”`.slice(0, 200), outcome: words,
      });
      return kept === null ? notFound('This instrument') : ok(kept);
    }),
  };
}
