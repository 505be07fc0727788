import { contract, type Input, type OperationName, type Output } from '../../app/contract/index.ts';
import type { Service, Services } from '../services/service.ts';
import type { Scenario, ScenarioItem, ScenarioStone } from './scenario-schema.ts';

/** A case of the scenario as the casebook knows it: ids by label. */
export type StagedCase = {
  readonly id: string; readonly number: string;
  readonly items: ReadonlyMap<string, { readonly id: string; readonly item: ScenarioItem }>;
  readonly stones: ReadonlyMap<string, { readonly id: string; readonly stone: ScenarioStone }>;
};

/** What the play needs: the scenario, the services, and what has been made so far by the scenario's own keys. */
export type Stage = {
  readonly scenario: Scenario;
  readonly people: ReadonlyMap<string, string>;
  readonly clients: Map<string, string>;
  readonly instruments: Map<string, string>;
  readonly samples: Map<string, string>;
  readonly cases: Map<string, StagedCase>;
  /** The date so many working days from today, yyyy-mm-dd. */
  due(offset: number): string;
  /** Calls a service as a window would, through its schema, in the name of a person of the scenario. Throws where it is refused. */
  ask<K extends OperationName>(person: string, name: K, input: Input<K>): Promise<Output<K>>;
};

/** What stands under a key of the scenario. Throws where the scenario names something it does not have. */
export function under<T>(map: ReadonlyMap<string, T>, key: string, what: string): T {
  const found = map.get(key);
  if (found === undefined) throw new Error(`demonstration: there is no ${what} “${key}”`);
  return found;
}

/** The role that an operation asks for must be one of the person's, as at the door. */
function mustBeAllowed(scenario: Scenario, person: string, name: OperationName): void {
  const { may } = contract[name];
  const roles = scenario.people.find((one) => one.key === person)?.roles ?? [];
  if (Array.isArray(may) && !may.some((role) => roles.includes(role))) throw new Error(`demonstration: ${person} may not do ${name}`);
}

/** An `ask` on these services. */
export function askServices(services: Services, scenario: Scenario, people: ReadonlyMap<string, string>): Stage['ask'] {
  return async (person, name, input) => {
    const session = { personId: under(people, person, 'person') };
    mustBeAllowed(scenario, person, name);
    const parsed = contract[name].input.parse(input);
    const service = services[name] as unknown as Service<typeof name>;
    const answer = await service(parsed as Parameters<typeof service>[0], { session, signal: new AbortController().signal, emit() {} });
    if (answer.ok) return answer.value;
    throw new Error(`demonstration: ${name} was refused: ${answer.error.message} ${JSON.stringify(answer.error.fields ?? {})}`);
  };
}
