import type { Output } from '../../app/contract/index.ts';
import { ok, type Result } from '../../app/result.ts';
import { analysedUnits } from '../../app/runs/analysed-units.ts';
import { analysableMethod, analysisParameters, type AnalysisParameters } from '../../app/spectra/analysis.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Spectrum } from '../../app/spectra/spectrum.ts';
import type { StoredSpectrum } from '../../db/store/spectra.ts';
import { taskFailure } from '../workers/task-failure.ts';
import { notFound } from './failures.ts';
import { withHouseScale } from './house-scale.ts';
import { ownedFloats } from './owned-bytes.ts';
import type { Services } from './service.ts';
import { asFailure, changing, reading, type Work, type WorkDeps } from './work-context.ts';

type Curves = Output<'spectra.curves'>;
const NONE = new Float64Array(0);

/** Points in the order of x, which may descend in the file. */
function ascending({ x, y }: Spectrum): { x: Float64Array; y: Float64Array } {
  const order = Uint32Array.from(x, (_, index) => index).sort((a, b) => x[a]! - x[b]!);
  return { x: Float64Array.from(order, (index) => x[index]!), y: Float64Array.from(order, (index) => y[index]!) };
}

/** The curve as stored, where it can't be analysed: no smoothed curve and no baseline. */
function bareCurves({ curve, laserNm }: StoredSpectrum): Curves {
  const { x, y } = ascending(curve);
  return { xUnit: curve.xUnit, yUnit: curve.yUnit, laserNm, x: ownedFloats(x), raw: ownedFloats(y), smoothed: NONE, baseline: NONE };
}

/** Parameters of the newest analysis, or those the method begins with; null where the method's curves can't be analysed. */
function parametersFor(stored: StoredSpectrum): AnalysisParameters | null {
  if (stored.parameters !== null) return stored.parameters;
  const method = analysableMethod.safeParse(stored.method);
  return method.success ? analysisParameters.parse({ method: method.data, laserNm: stored.laserNm ?? undefined }) : null;
}

/** Recomputes what the view draws; nothing of it is stored, and the same parameters give the same curves. */
async function curvesOf(stored: StoredSpectrum, { pool, call }: Work): Promise<Result<Curves, Failure>> {
  const parameters = parametersFor(stored);
  if (parameters === null) return ok(bareCurves(stored));
  const task = await pool.run('analyse-spectrum', { spectrum: stored.curve, parameters }, { signal: call.signal });
  if (!task.ok) return taskFailure(task.error);
  if (!task.value.ok) return ok(bareCurves(stored));
  const { x, raw, smoothed, baseline } = task.value.value.curves;
  return ok({ ...analysedUnits(parameters.method, stored.curve.yUnit), laserNm: parameters.laserNm ?? stored.laserNm, x: ownedFloats(x), raw: ownedFloats(raw), smoothed: ownedFloats(smoothed), baseline: ownedFloats(baseline) });
}

export function createSpectraServices(deps: WorkDeps): Pick<Services, 'runs.analyse' | 'spectra.curves'> {
  return {
    'spectra.curves': reading(deps, 'spectra.curves', async (input, work) => {
      const stored = await work.stores.spectra.get(input.spectrumId);
      return stored.ok ? curvesOf(stored.value, work) : stored;
    }),

    'runs.analyse': changing(deps, 'runs.analyse', async (input, work) => {
      const { stores, pool, call, change } = work;
      const found = await stores.spectra.get(input.spectrumId);
      if (!found.ok) return found;
      const stored = found.value;
      if (input.parameters.method !== stored.method) {
        return asFailure({ code: 'invalid-input', field: 'parameters.method', message: 'A curve is analysed by the method of its run.', next: 'If the wrong method was chosen, record the file again as a run of the right one.' });
      }
      const parameters = await withHouseScale(input.parameters, work);
      const task = await pool.run('analyse-spectrum', { spectrum: stored.curve, parameters }, { signal: call.signal });
      if (!task.ok) return taskFailure(task.error);
      if (!task.value.ok) return asFailure({ code: 'refused', message: task.value.error.message, next: 'Correct the parameters and analyse again; the earlier analysis stays as it is.' });
      await stores.spectra.addAnalysis(change, stored, task.value.value.result);
      const view = await stores.runs.spectrumView(stored.stoneId, stored.id);
      return view === null ? notFound('This spectrum') : ok(view);
    }),
  };
}
