import type { Protocol } from '../../app/protocol/protocol.ts';

type Step = Protocol['steps'][number];

/** The protocol with one step changed, or left out. */
export const withStep = (one: Protocol, at: number, step: Step | null): Protocol => ({ ...one, steps: one.steps.flatMap((entry, i) => (i !== at ? [entry] : step === null ? [] : [step])) });

/** The protocol with a step moved by one place; past an end nothing happens. */
export function moveStep(one: Protocol, at: number, by: 1 | -1): Protocol {
  const to = at + by;
  const step = one.steps[at];
  if (step === undefined || to < 0 || to >= one.steps.length) return one;
  const steps = one.steps.filter((_, i) => i !== at);
  steps.splice(to, 0, step);
  return { ...one, steps };
}
