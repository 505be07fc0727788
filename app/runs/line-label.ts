import { centreLabel, type CentreLabelOf } from '../figure/centre-label.ts';
import { INFRARED_REFERENCE_LINES } from '../reference/infrared-reference-lines.ts';
import { ARTEFACT_LINES, SIMULANTS } from '../reference/reference-lines.ts';
import { RAMAN_ID } from '../spectra/analyse-emission.ts';

/** The 596/597 nm pair where the instrument shows one line: an id of the analysis, not of the table. */
const MERGED_PAIR = 'CVD596-597';

/** Label of any line that an analysis can name: optical centres, the diamond line, infrared lines, imitations, foreign light. */
export const lineLabel: CentreLabelOf = (id) => {
  const centre = centreLabel(id);
  if (centre !== undefined) return centre;
  if (id === MERGED_PAIR) return { name: 'CVD pair', ink: 'cvd' };
  if (id === RAMAN_ID) return { name: 'diamond Raman', ink: 'accent' };
  const infrared = INFRARED_REFERENCE_LINES.find((line) => line.id === id);
  if (infrared !== undefined) return { name: infrared.what, ink: id === 'IR-3123' ? 'cvd' : 'ink' };
  const simulant = SIMULANTS.find((entry) => entry.id === id);
  if (simulant !== undefined) return { name: simulant.name, ink: 'warn' };
  const artefact = ARTEFACT_LINES.find((line) => line.id === id);
  return artefact === undefined ? undefined : { name: artefact.what, ink: 'ink3' };
};
