import { centreLabel } from '../../app/figure/centre-label.ts';
import type { ReferenceLine } from '../../app/figure/figure-lines.ts';
import type { Ink } from '../../app/figure/figure-model.ts';
import type { StatableXUnit } from '../../app/spectra/spectrum.ts';
import { expectedLine } from '../../app/reference/optical-centre.ts';
import { OPTICAL_CENTRES } from '../../app/reference/optical-centres.ts';
import { INFRARED_REFERENCE_LINES } from '../../app/reference/infrared-reference-lines.ts';
import { ARTEFACT_LINES, SIMULANTS } from '../../app/reference/reference-lines.ts';

/** One thing that can be laid over a spectrum: a centre's line, or the Raman lines of an imitation. */
export type ReferenceChoice = {
  readonly id: string;
  readonly name: string;
  /** What it is, in a few words. */
  readonly what: string;
  readonly at: readonly number[];
  readonly unit: StatableXUnit;
  readonly ink: Ink;
  /** How it is written above its line. */
  readonly shortName: string;
};

/** Every reference position: centres by wavelength at the stone's temperature (kelvin), places of the infrared, imitations, foreign light. */
export function referenceChoices(temperatureK: number): ReferenceChoice[] {
  const centres = OPTICAL_CENTRES.map((centre): ReferenceChoice => {
    const label = centreLabel(centre.id);
    return { id: centre.id, name: centre.name, what: centre.model, at: [expectedLine(centre, temperatureK).nm], unit: 'nm', ink: label?.ink ?? 'ink2', shortName: label?.name || centre.name };
  });
  const simulants = SIMULANTS.map((simulant): ReferenceChoice => ({
    id: simulant.id, name: simulant.name, what: 'Raman lines of an imitation', at: simulant.linesCm1, unit: 'raman-shift', ink: 'warn', shortName: simulant.name,
  }));
  const infrared = INFRARED_REFERENCE_LINES.map((line): ReferenceChoice => ({
    id: line.id, name: line.what, what: 'infrared', at: [line.cm1], unit: 'cm-1', ink: line.id === 'IR-3123' ? 'cvd' : 'ink2', shortName: line.what.split(',')[0]!,
  }));
  const foreign = ARTEFACT_LINES.map((line): ReferenceChoice => ({ id: line.id, name: line.what, what: 'light that is not the stone’s', at: [line.nm], unit: 'nm', ink: 'ink3', shortName: line.what.replace(/^an? /, '') }));
  return [...centres, ...infrared, ...simulants, ...foreign];
}

/** Those that have the words in name, description or position; all where nothing is written. */
export function filterReferences(choices: readonly ReferenceChoice[], text: string): ReferenceChoice[] {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  return choices.filter((choice) => {
    const hay = `${choice.name} ${choice.shortName} ${choice.what} ${choice.at.map((at) => at.toFixed(1)).join(' ')}`.toLowerCase();
    return words.every((word) => hay.includes(word));
  });
}

/** The lines of the chosen ones, as a figure draws them: dashed, beside what was found. */
export const referenceLines = (choices: readonly ReferenceChoice[], chosen: ReadonlySet<string>): ReferenceLine[] =>
  choices.filter((choice) => chosen.has(choice.id)).flatMap((choice) => choice.at.map((at): ReferenceLine => ({ at, unit: choice.unit, name: choice.shortName, ink: choice.ink, dash: true })));
