import type { RunView, SpectrumView } from '../contract/work.ts';
import { formatCarat } from '../domain/weight.ts';
import type { ReportSource, SourceStone } from '../report/content/report-source.ts';
import type { BalanceUncertainty } from '../report/content/weight-text.ts';
import type { AnalysisResult, PeakResult } from '../spectra/analysis.ts';
import { quantityOf, weighed, type Quantity } from './quantity.ts';
import type { ReportDocument } from './report-document.ts';

type Stone = ReportDocument['stones'][number];
type Measurement = Stone['measurements'][number];
type Line = Stone['runs'][number]['analyses'][number]['lines'][number];

/** Units as they are printed. */
const UNIT_TEXT: Readonly<Record<PeakResult['unit'], string>> = {
  nm: 'nm', 'nm-vacuum': 'nm in vacuum', angstrom: 'Å', 'cm-1': 'cm-1', ev: 'eV', 'raman-shift': 'cm-1', pixel: 'pixel', other: 'as in the file', unstated: 'not stated',
};

const FIT = 'one standard deviation of the fit';

/** Fit and scale together where the axis is in nanometres, the unit in which the scale's error is known. */
function positionOf({ position, unit, standardError }: PeakResult, calibrationErrorNm: number): Quantity {
  if (standardError === null) return quantityOf(position, UNIT_TEXT[unit]);
  return unit === 'nm'
    ? quantityOf(position, UNIT_TEXT.nm, Math.hypot(standardError, calibrationErrorNm), 'one standard deviation of fit and wavelength scale')
    : quantityOf(position, UNIT_TEXT[unit], standardError, `${FIT}; the scale comes on top`);
}

/** Every line that an analysis found. */
export function linesOf({ peaks, parameters }: AnalysisResult, ordinates: string): Line[] {
  return peaks.map((peak) => ({
    position: positionOf(peak, parameters.calibrationErrorNm),
    width: quantityOf(peak.fwhm, UNIT_TEXT[peak.unit]), height: quantityOf(peak.height, ordinates), signalToNoise: quantityOf(peak.snr, '1'),
    centre: peak.centre, ambiguousWith: peak.ambiguousWith, sidebandOf: peak.sidebandOf,
  }));
}

type Found = { readonly quantity: string; readonly result: Quantity };

const known = (quantity: string, value: number | null, unit: string, uncertainty: number | null = null, covers = ''): Found[] =>
  value === null ? [] : [{ quantity, result: quantityOf(value, unit, uncertainty, covers) }];

function infraredValues({ infrared }: AnalysisResult): Found[] {
  if (infrared === null || infrared.type === 'not-determined') return [];
  const { nitrogenPpm, uncertaintyPpm } = infrared;
  const ppm = (name: string, part: keyof typeof nitrogenPpm): Found[] =>
    known(name, nitrogenPpm[part], 'ppm', uncertaintyPpm[part], 'one standard deviation: fit, shapes, conversion and scale');
  return [
    ...ppm('nitrogen in A centres', 'A'), ...ppm('nitrogen in B centres', 'B'), ...ppm('single nitrogen (C centres)', 'C'), ...ppm('single nitrogen, charged', 'Nplus'),
    ...known('nitrogen that would have been seen', infrared.detectionLimitPpm, 'ppm'),
    ...known('uncompensated boron, indicative', infrared.boronPpm, 'ppm'),
    ...known('share of aggregated nitrogen in B centres', infrared.aggregationPercent, '%'),
    ...known('hydrogen line at 3107 cm-1', infrared.line3107, 'cm-1'), ...known('line at 3123 cm-1', infrared.line3123, 'cm-1'), ...known('platelet peak', infrared.platelet, 'cm-1'),
  ];
}

function spectrumValues({ analysis }: SpectrumView): Found[] {
  if (analysis === null) return [];
  const { diamondRaman, ultraviolet } = analysis.result;
  return [
    ...known('diamond Raman line, wavelength in air', diamondRaman?.foundNm ?? null, 'nm'), ...known('diamond Raman line, shift', diamondRaman?.shiftCm1 ?? null, 'cm-1'),
    ...infraredValues(analysis.result),
    ...known('ultraviolet transmission edge', ultraviolet?.edgeNm ?? null, 'nm'), ...known('ultraviolet transmission, short over long wave', ultraviolet?.ratio ?? null, '1'),
  ];
}

function observedValues({ observation }: RunView): Found[] {
  const stated = 'as stated by the examiner';
  if (observation?.method === 'specific-gravity') return known('specific gravity', observation.value, '1', observation.uncertainty, stated);
  if (observation?.method === 'refractive-index') return known('refractive index', observation.value ?? null, '1', observation.uncertainty ?? null, stated);
  if (observation?.method === 'phosphorescence') return known('duration of phosphorescence', observation.seconds, 's');
  return [];
}

function ofRun(run: RunView): Measurement[] {
  const own = { run: run.number, method: run.method };
  return [
    ...observedValues(run).map((found) => ({ ...found, ...own, file: null })),
    ...run.spectra.flatMap((spectrum) => spectrumValues(spectrum).map((found) => ({ ...found, ...own, file: spectrum.fileName }))),
  ];
}

/** Every number that was measured of a stone, with unit and, where it is known, uncertainty. */
export function measurementsOf({ stone, runs }: SourceStone, weights: NonNullable<ReportSource['weights']>, settings: BalanceUncertainty): Measurement[] {
  const atHand = { run: null, method: null, file: null };
  const onBalance = stone.weight === null ? [] : [{ quantity: 'weight', result: weighed(stone.weight, 'ct', settings), ...atHand }];
  const estimates = weights.flatMap((piece) => piece.weights.stones).flatMap(({ stoneId, estimate }) => (stoneId === stone.id && estimate !== null ? [estimate] : []));
  const estimated = estimates.map(({ weight, uncertainty }) => ({
    quantity: 'weight, estimated from measures', ...atHand,
    result: { value: formatCarat(weight), unit: 'ct', uncertainty: formatCarat(uncertainty), covers: 'one standard deviation: measures, formula and girdle' },
  }));
  return [...onBalance, ...estimated, ...runs.flatMap(ofRun)];
}
