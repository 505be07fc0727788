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
