import { GLOW_WORDS, OBSERVATION_WORDS } from './observation-words.ts';
import type { Observation } from '../domain/observation.ts';
import { opticalCentre } from '../reference/optical-centres.ts';
import type { AnalysisResult } from '../spectra/analysis.ts';

export type RunContent = {
  readonly observation: Observation | null;
  /** Newest analysis of each curve; null where a curve has none. */
  readonly analyses: readonly (AnalysisResult | null)[];
  readonly refusedFiles: number;
  readonly files: number;
};

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

function observedText(observation: Observation): string {
  switch (observation.method) {
    case 'fluorescence-long-wave':
    case 'fluorescence-short-wave':
      return observation.strength === 'inert' ? 'inert' : `${GLOW_WORDS[observation.strength]} ${OBSERVATION_WORDS[observation.colour] ?? observation.colour}`;
    case 'phosphorescence':
      return observation.strength === 'inert' || observation.seconds === 0 ? 'no after-glow' : `${GLOW_WORDS[observation.strength]} ${OBSERVATION_WORDS[observation.colour] ?? observation.colour}, ${observation.seconds} s`;
    case 'growth-pattern':
    case 'crossed-polarisers':
      return OBSERVATION_WORDS[observation.pattern] ?? observation.pattern;
    case 'magnet': return observation.response === 'none' ? 'no response' : `${observation.response} response`;
    case 'microscopy': return observation.features.map((feature) => OBSERVATION_WORDS[feature] ?? feature).join(', ');
    case 'thermal-probe':
    case 'electrical-conductivity':
    case 'ultraviolet-transmission':
      return OBSERVATION_WORDS[observation.reading] ?? observation.reading;
    case 'refractive-index': return observation.reading === 'over-scale' || observation.value === undefined ? 'above the scale' : `${observation.value}${observation.uncertainty === undefined ? '' : ` ± ${observation.uncertainty}`}, by ${observation.by}`;
    case 'specific-gravity': return `${observation.value} ± ${observation.uncertainty}`;
  }
}

const DIAMOND_WORDS = { present: 'diamond line present', absent: 'diamond line absent', masked: 'diamond line masked' } as const;

function analysedText(analysis: AnalysisResult): string {
  const parts: string[] = [];
  const centres = new Set(analysis.peaks.flatMap((peak) => peak.centre === null || opticalCentre(peak.centre) === undefined ? [] : [peak.centre]));
  if (analysis.infrared !== null) {
    parts.push(analysis.infrared.type === 'not-determined' ? 'type not determined' : `type ${analysis.infrared.type}`);
  } else if (analysis.ultraviolet !== null) {
    parts.push(analysis.ultraviolet.edgeNm === null ? 'no edge found' : `edge at ${Math.round(analysis.ultraviolet.edgeNm)} nm`);
  } else {
    parts.push(centres.size === 0 ? 'no optical centre' : plural(centres.size, 'optical centre', 'optical centres'));
  }
  if (analysis.diamondRaman !== null) parts.push(DIAMOND_WORDS[analysis.diamondRaman.state]);
  return parts.join(', ');
}

/** One line that tells in a table what a run brought, for instance "5 optical centres, diamond line present". */
export function readsLine(run: RunContent): string {
  const parts: string[] = [];
  if (run.observation !== null) parts.push(observedText(run.observation));
  const analysed = run.analyses.filter((analysis) => analysis !== null);
  if (analysed.length === 1) parts.push(analysedText(analysed[0]!));
  if (analysed.length > 1) parts.push(`${analysed.length} curves: ${analysedText(analysed[0]!)}`);
  const bare = run.analyses.length - analysed.length;
  if (bare > 0) parts.push(`${plural(bare, 'curve', 'curves')} not analysed`);
  if (run.refusedFiles > 0) parts.push(run.refusedFiles === run.files ? 'not readable, file kept' : `${run.refusedFiles} of ${run.files} files not readable`);
  return parts.join('; ') || 'file kept';
}
