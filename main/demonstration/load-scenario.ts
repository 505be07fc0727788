import content from '../../assets/demonstration/scenario.json' with { type: 'json' };
import { scenarioSchema, type Scenario } from './scenario-schema.ts';

/** The invented laboratory that comes with the program. Throws where the file in assets/ does not fit its schema: a fault of the program. */
export function loadScenario(): Scenario {
  return scenarioSchema.parse(content);
}
