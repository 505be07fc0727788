import type { ColourClass } from '../../domain/colour-class.ts';
import { COLOUR_CLASS_WORDS } from '../../domain/colour-class.ts';
import type { FindingFact } from '../../domain/finding.ts';
import type { Observation } from '../../domain/observation.ts';

/** What has to be known beside an observation to say what it means. */
export type ObservationContext = {
  readonly colourClass: ColourClass;
  readonly mounted: boolean;
  /** What was observed on this stone before, oldest first. */
  readonly others: readonly Observation[];
};

/** A rule that holds for colourless stones loses its weight on any other, and says so. */
export function colourlessOnly(fact: FindingFact, context: ObservationContext): FindingFact {
  if (context.colourClass === 'colourless') return fact;
  const why = context.colourClass === 'unknown' ? 'the colour class is not stated' : `this stone is ${COLOUR_CLASS_WORDS[context.colourClass]}`;
  return { ...fact, strength: 'neutral', supports: 'none', caution: `the rule holds for colourless stones only; ${why}` };
}

/** The latest observation of a method made before, if any. */
export function latest<M extends Observation['method']>(method: M, context: ObservationContext): Extract<Observation, { method: M }> | undefined {
  return context.others.filter((other): other is Extract<Observation, { method: M }> => other.method === method).at(-1);
}
