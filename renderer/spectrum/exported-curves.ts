import type { FigureAxis } from '../../app/figure/figure-model.ts';
import type { FigureCurve } from '../../app/figure/spectrum-figure.ts';
import { ok, type Result } from '../../app/result.ts';
import { onCommonAxis, type CommonAxisError } from '../../app/spectra/common-axis.ts';
import type { YUnit } from '../../app/spectra/spectrum.ts';
import type { SpectrumBlock } from '../../app/files/spectrum-file.ts';
import type { LoadedCurves } from './prepare-curves.ts';

type Exported = Pick<SpectrumBlock, 'title' | 'x' | 'y' | 'xUnit' | 'yUnit' | 'xUnitText' | 'yUnitText'>;

/** The curve as read, then what was made of it, on one axis; only what is there. */
export function exportedCurves({ x, raw, smoothed, baseline, xUnit, yUnit }: LoadedCurves): Exported[] {
  const common = { x, xUnit, yUnit, xUnitText: '', yUnitText: '' };
  return [
    { ...common, title: 'as read', y: raw },
    ...(smoothed.length === x.length ? [{ ...common, title: 'processed', y: smoothed }] : []),
    ...(baseline.length === x.length ? [{ ...common, title: 'baseline', y: baseline }] : []),
  ];
}

export type ShownCurves = { readonly curves: readonly FigureCurve[]; readonly axis: FigureAxis; readonly yUnit: YUnit; /** Caption of values that no unit names. */ readonly yLabel: string | null };

/** What the figure shows, on the points of its coarsest curve over the range that all cover. Errors: curves without a range in common. */
export function exportedAsShown({ curves, axis, yUnit, yLabel }: ShownCurves): Result<Exported[], CommonAxisError> {
  const common = onCommonAxis(curves);
  if (!common.ok) return common;
  const { x, ys } = common.value;
  return ok(ys.map((y, i) => ({ title: curves[i]!.label, x, y, xUnit: axis, yUnit: yLabel === null ? yUnit : 'other', xUnitText: '', yUnitText: yLabel ?? '' })));
}
