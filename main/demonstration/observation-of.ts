import type { MethodId } from '../../app/domain/method.ts';
import type { Observation } from '../../app/domain/observation.ts';
import type { Scenario, ScenarioStone } from './scenario-schema.ts';

/** What a person sees of this stone by this method: the stone's own look, else that of its kind; null where neither says. */
export function observationOf(scenario: Scenario, stone: ScenarioStone, method: MethodId): Observation | null {
  return stone.sees.find((seen) => seen.method === method) ?? scenario.appearance[stone.is]?.find((seen) => seen.method === method) ?? null;
}
