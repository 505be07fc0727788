import type { SpectrumView } from '../../app/contract/work.ts';
import type { FigureCurve } from '../../app/figure/spectrum-figure.ts';
import { ORDINATE_LABELS } from '../../app/figure/figure-axes.ts';
import { combineCurves, type Combination } from '../../app/spectra/combine-curves.ts';
import { RAMAN_LINE } from '../../app/spectra/match-centres.ts';
import { normaliseCurve, type Normalisation } from '../../app/spectra/normalise-curve.ts';
import type { YUnit } from '../../app/spectra/spectrum.ts';
import { baselineOn, curveOn, shownUnit, type CurveChoice, type LoadedCurves, type PlainCurve } from './prepare-curves.ts';

/** How curves that lie over one another are brought to a common height. */
export const SCALES = ['measured', 'range', 'maximum', 'area', 'snv', 'position', 'diamond-line'] as const;
export type Scale = (typeof SCALES)[number];
export const SCALE_WORDS: Readonly<Record<Scale, string>> = {
  measured: 'as measured', range: 'lowest point 0, highest 1', maximum: 'highest point 1', area: 'area 1', snv: 'mean 0, deviation 1', position: 'value at a position 1', 'diamond-line': 'diamond line 1',
};
/** Caption of an ordinate after scaling. */
const SCALED_LABELS: Readonly<Record<Exclude<Scale, 'measured'>, string>> = {
  range: 'each curve on its own scale', maximum: 'share of the highest point', area: 'share of the area', snv: 'deviations from the mean', position: 'share of the value at the position', 'diamond-line': 'heights of the diamond line',
};

export type Layer = {
  readonly label: string;
  readonly curves: LoadedCurves;
  /** Height of the diamond line where the analysis found it, in the curve's own unit. */
  readonly diamondHeight: number | null;
};
/** Height of the diamond line where the analysis found it for certain. */
export const diamondHeight = (spectrum: SpectrumView): number | null => spectrum.analysis?.result.peaks.find((peak) => peak.centre === RAMAN_LINE)?.height ?? null;

export type Together = {
  readonly scale: Scale;
  /** For the scale by a position, on the shown axis; null until one is written. */
  readonly at: number | null;
  readonly combine: Combination | null;
  /** Place in the list of layers of the curve it is combined with. */
  readonly partner: number;
};
export type Drawn = {
  readonly curves: readonly FigureCurve[];
  readonly yUnit: YUnit;
  /** Caption where the unit alone does not say it. */
  readonly yLabel: string | null;
  /** What could not be done, in sentences. */
  readonly remarks: readonly string[];
};

function normalisation(scale: Exclude<Scale, 'measured'>, at: number | null, layer: Layer): Normalisation {
  switch (scale) {
    case 'position': return { way: 'position', at: at ?? Number.NaN };
    case 'diamond-line': return { way: 'height', height: layer.diamondHeight ?? Number.NaN };
    default: return { way: scale };
  }
}

function scaledLayer(layer: Layer, choice: CurveChoice, { scale, at }: Together, remarks: string[]): PlainCurve {
  const plain = curveOn(layer.curves, layer.label, choice);
  if (scale === 'measured') return plain;
  if (scale === 'position' && at === null) {
    if (remarks.length === 0) remarks.push('Write the position at which every curve shall be 1.');
    return plain;
  }
  const scaled = normaliseCurve(plain, normalisation(scale, at, layer));
  if (scaled.ok) return { ...plain, y: scaled.value };
  remarks.push(`${layer.label} is not scaled. ${scaled.error.message}`);
  return plain;
}

const SIGNS: Readonly<Record<Combination, string>> = { difference: '−', ratio: '÷' };

/** Everything the figure draws: the layers over one another, or two of them combined; the first layer is the spectrum in question. */
export function drawnCurves(layers: readonly [Layer, ...Layer[]], choice: CurveChoice, together: Together): Drawn {
  const remarks: string[] = [];
  const [main] = layers;
  const scale: Scale = layers.length > 1 ? together.scale : 'measured';
  const plain = layers.map((layer) => scaledLayer(layer, choice, { ...together, scale }, remarks));
  // Of a scaled and an unscaled curve neither difference nor ratio means anything.
  const allScaled = remarks.length === 0;
  const yUnit = shownUnit(main.curves, choice);
  const scaledLabel = scale === 'measured' ? null : SCALED_LABELS[scale];
  const partner = together.combine === null ? undefined : plain[together.partner];
  if (allScaled && together.combine !== null && partner !== undefined && partner !== plain[0]) {
    const combined = combineCurves(plain[0]!, partner, together.combine);
    if (combined.ok) {
      const label = `${plain[0]!.label} ${SIGNS[together.combine]} ${partner.label}`;
      const yLabel = together.combine === 'ratio' ? 'ratio' : `difference, ${scaledLabel ?? ORDINATE_LABELS[yUnit]}`;
      return { curves: [{ label, ...combined.value, xUnit: choice.axis, ink: 'ink', dash: false }], yUnit, yLabel, remarks };
    }
    remarks.push(combined.error.message);
  }
  const baseline = scale === 'measured' ? baselineOn(main.curves, choice) : null;
  return { curves: [{ ...plain[0]!, ink: 'ink', dash: false }, ...(baseline === null ? [] : [baseline]), ...plain.slice(1)], yUnit, yLabel: scaledLabel, remarks };
}
