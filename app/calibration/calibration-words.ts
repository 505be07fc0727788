import { largestUncertainty, type ScaleFit } from './scale-fit.ts';
import { UNIT_WORDS } from './standard.ts';

/** correct: later positions are corrected by it; note: they are left as the instrument shows them. */
export const SCALE_USES = ['correct', 'note'] as const;
export type ScaleUse = (typeof SCALE_USES)[number];

/** Standard uncertainty of later positions, unit of the scale. */
export const errorOfUse = (fit: ScaleFit, use: ScaleUse): number => (use === 'correct' ? largestUncertainty(fit) : Math.max(fit.deviationRms, largestUncertainty(fit)));

/** Beyond this a scale is better set at the instrument itself than corrected or borne (judgement). */
export const GOOD_SCALE: Readonly<Record<ScaleFit['unit'], number>> = { nm: 0.3, 'cm-1': 2, 'raman-shift': 2 };
/** Whether a calibration lets the instrument count as in order; what the sheet proposes. */
export const scaleInOrder = (fit: ScaleFit, use: ScaleUse): boolean => errorOfUse(fit, use) <= GOOD_SCALE[fit.unit];

const signed = (value: number): string => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(2)}`;

/** What came out, as it stands beside the instrument's other checks. */
export function calibrationWords(fit: ScaleFit, use: ScaleUse): string {
  const unit = UNIT_WORDS[fit.unit];
  const used = fit.lines.filter((line) => line.used);
  const [first, last] = [used[0]!.reference, used.at(-1)!.reference].sort((a, b) => a - b);
  const found = `${used.length} lines from ${first!.toFixed(1)} to ${last!.toFixed(1)} ${unit}; the scale read ${fit.deviationRms.toFixed(2)} ${unit} off (root mean square, at most ${signed(-fit.largestDeviation)})`;
  const after = use === 'correct'
    ? `corrected by a polynomial of degree ${fit.degree}, residual ${fit.residualRms.toFixed(3)} ${unit}`
    : 'positions are left as the instrument shows them';
  return `${found}; ${after}; uncertainty ${errorOfUse(fit, use).toFixed(3)} ${unit}.`;
}
