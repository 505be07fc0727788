import type { FigureModel } from '../../../app/figure/figure-model.ts';
import { spectrumFigure } from '../../../app/figure/spectrum-figure.ts';
import { analysedUnits } from '../../../app/runs/analysed-units.ts';
import { lineLabel } from '../../../app/runs/line-label.ts';
import { analyseSpectrum } from '../../../app/spectra/analyse-spectrum.ts';
import type { AnalysisParameters } from '../../../app/spectra/analysis.ts';
import type { Spectrum } from '../../../app/spectra/spectrum.ts';
import type { Task } from '../task.ts';

export type FigureOrder = {
  readonly spectrum: Spectrum; readonly parameters: AnalysisParameters;
  /** Codes of findings that the examiner set aside: their lines are drawn in the curve and not named. */
  readonly setAside: readonly string[];
};

/** Columns of a curve on paper: a page is 170 mm wide, and 0.2 mm is as fine as a printed line. */
const PAPER_COLUMNS = 850;

function figureOf({ spectrum, parameters, setAside }: FigureOrder): FigureModel | null {
  const analysed = analyseSpectrum(spectrum, parameters);
  if (!analysed.ok) return null;
  const { result, curves } = analysed.value;
  const { xUnit, yUnit } = analysedUnits(parameters.method, spectrum.yUnit);
  return spectrumFigure({
    curves: [{ label: '', x: curves.x, y: curves.raw, xUnit }], axis: xUnit, yUnit,
    peaks: result.peaks.filter((peak) => !setAside.includes(`centre:${peak.centre ?? ''}`)),
    diamondRaman: setAside.some((code) => code.startsWith('diamond-line:')) ? null : result.diamondRaman,
    columns: PAPER_COLUMNS, centreLabel: lineLabel, ...(parameters.laserNm === undefined ? {} : { laserNm: parameters.laserNm }),
  });
}

/** The figures of a report, one for each order; null where a curve can't be analysed. */
export const reportFiguresTask: Task<readonly FigureOrder[], (FigureModel | null)[]> = {
  run: (orders, { progress }) => orders.map((order, index) => {
    const figure = figureOf(order);
    progress({ done: index + 1, total: orders.length, note: 'figures' });
    return figure;
  }),
};
