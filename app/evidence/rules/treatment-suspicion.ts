import { hasWeight } from '../weighed-finding.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

/** Any counted finding of treatment is a suspicion: a natural stone with one leaves this screening. */
export const treatmentSuspicion = (counted: readonly WeighedFinding[]): WeighedFinding[] => counted.filter((finding) => finding.supports === 'treatment' && hasWeight(finding));

export const TREATMENT_LEAVES_SCREENING = 'A finding of treatment was recorded: treated stones are outside this screening. Their treatment needs infrared, absorption and cooled photoluminescence, judged by a laboratory equipped for it.';
