import type { BroadBandMatch } from './broad-bands.ts';
import type { AnalysisParameters, AnalysisWarning, PeakResult } from './analysis.ts';
import type { DiamondRaman } from './diamond-raman.ts';
import type { SimulantMatch } from './identify-simulant.ts';
import type { Match } from './match-centres.ts';
import type { UltravioletReading } from './ultraviolet.ts';
import type { InfraredReading } from '../infrared/infrared-reading.ts';

/** What the parts of the analysis read, before it is put into sentences. */
export type FindingInput = {
  readonly parameters: AnalysisParameters;
  readonly peaks: readonly PeakResult[];
  /** Lines in nm with what they match, in the order of the peaks; empty for infrared. */
  readonly named: readonly Match[];
  readonly diamondRaman: DiamondRaman | null;
  readonly simulant: SimulantMatch | null;
  readonly infrared: InfraredReading | null;
  readonly ultraviolet: Omit<UltravioletReading, 'warnings'> | null;
  readonly bands: readonly BroadBandMatch[];
  readonly warnings: readonly AnalysisWarning[];
};
