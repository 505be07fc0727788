import { ARTEFACT_LINES } from '../reference/reference-lines.ts';
import type { AnalysisWarning } from './analysis.ts';
import type { Match } from './match-centres.ts';

/** One warning for each line that may be lamp light, daylight or the like; such lines get no name. */
export function artefactWarnings(matches: readonly Match[]): AnalysisWarning[] {
  return matches.flatMap((match) => {
    const artefact = ARTEFACT_LINES.find((line) => line.id === match.artefact);
    if (!artefact) return [];
    return [{ code: 'artefact-line', message: `The line at ${match.line.position.toFixed(2)} nm lies where ${artefact.what} does (${artefact.nm} nm): darken the room or take a background, and measure again.` }];
  });
}
