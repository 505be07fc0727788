import type { FindingFact } from '../domain/finding.ts';
import type { Observation } from '../domain/observation.ts';
import { assertNever } from '../result.ts';
import type { ObservationContext } from './observe/context.ts';
import { crossedPolarisersFindings } from './observe/crossed-polarisers.ts';
import { fluorescenceFindings } from './observe/fluorescence.ts';
import { growthPatternFindings } from './observe/growth-pattern.ts';
import { microscopyFindings } from './observe/microscopy.ts';
import { phosphorescenceFindings } from './observe/phosphorescence.ts';
import { electricalFindings, magnetFindings, refractiveIndexFindings, specificGravityFindings, thermalProbeFindings, ultravioletTransmissionFindings } from './observe/physical-tests.ts';

export type { ObservationContext } from './observe/context.ts';

/**
 * What a person’s observation says: one fact each, with its weight, its counter-example and its source. Rules that hold for
 * colourless stones lose their weight on others. With both lamps recorded, the later one brings their comparison.
 */
export function findingsFromObservation(observation: Observation, context: ObservationContext): FindingFact[] {
  switch (observation.method) {
    case 'fluorescence-long-wave': case 'fluorescence-short-wave': return fluorescenceFindings(observation, context);
    case 'phosphorescence': return phosphorescenceFindings(observation, context);
    case 'growth-pattern': return growthPatternFindings(observation);
    case 'crossed-polarisers': return crossedPolarisersFindings(observation);
    case 'magnet': return magnetFindings(observation);
    case 'microscopy': return microscopyFindings(observation);
    case 'thermal-probe': return thermalProbeFindings(observation);
    case 'electrical-conductivity': return electricalFindings(observation);
    case 'specific-gravity': return specificGravityFindings(observation);
    case 'refractive-index': return refractiveIndexFindings(observation);
    case 'ultraviolet-transmission': return ultravioletTransmissionFindings(observation, context);
    default: return assertNever(observation);
  }
}
