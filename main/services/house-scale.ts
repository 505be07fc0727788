import type { AnalysisParameters } from '../../app/spectra/analysis.ts';
import type { Work } from './work-context.ts';

/** The parameters with the laboratory's own two-phonon coefficient, where an infrared analysis states none: it sets the scale of every amount. */
export async function withHouseScale(parameters: AnalysisParameters, { casebook }: Pick<Work, 'casebook'>): Promise<AnalysisParameters> {
  if (parameters.method !== 'infrared' || parameters.twoPhononCoefficient !== undefined) return parameters;
  const laboratory = await casebook.laboratory.get();
  return laboratory === null ? parameters : { ...parameters, twoPhononCoefficient: laboratory.settings.twoPhononCoefficient };
}
