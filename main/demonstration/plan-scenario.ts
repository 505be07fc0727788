import { dayInZone } from '../../app/custody/calendar.ts';
import type { Scenario, ScenarioCase, ScenarioStep } from './scenario-schema.ts';
import type { scenarioCalendar } from './working-days.ts';

type Calendar = ReturnType<typeof scenarioCalendar>;
type Check = Scenario['instruments'][number]['checks'][number];

/** One thing that happens at one instant. */
export type Happening =
  | { readonly kind: 'client'; readonly at: Date; readonly client: Scenario['clients'][number] }
  | { readonly kind: 'instrument'; readonly at: Date; readonly instrument: Scenario['instruments'][number] }
  | { readonly kind: 'check'; readonly at: Date; readonly instrument: string; readonly check: Check }
  | { readonly kind: 'sample'; readonly at: Date; readonly sample: Scenario['knownSamples'][number] }
  | { readonly kind: 'trial'; readonly at: Date; readonly trial: Scenario['trials'][number]; /** Calendar day in the laboratory's zone. */ readonly on: string }
  | { readonly kind: 'intake'; readonly at: Date; readonly case: ScenarioCase; readonly dueOn: string | null }
  | { readonly kind: 'step'; readonly at: Date; readonly case: ScenarioCase; readonly step: ScenarioStep; readonly target: string };

/** "A-1..A-3" written out. Throws where the two ends are not of one item or run backwards. */
export function stoneLabels(written: readonly string[]): string[] {
  return written.flatMap((text) => {
    const [first, last] = text.split('..').map((label) => ({ item: label.slice(0, label.lastIndexOf('-')), ordinal: Number(label.slice(label.lastIndexOf('-') + 1)) }));
    if (last === undefined) return [text];
    if (last.item !== first!.item || last.ordinal < first!.ordinal) throw new Error(`stoneLabels: “${text}” is not a range`);
    return Array.from({ length: last.ordinal - first!.ordinal + 1 }, (_, i) => `${last.item}-${first!.ordinal + i}`);
  });
}

/** What a step is done to, one after the other: labels of stones or items, or the case itself. */
function targets(step: ScenarioStep): string[] {
  switch (step.do) {
    case 'custody': return step.items;
    case 'photograph': case 'map': case 'compare-pair': case 'count-lot': case 'plan-lot': case 'test-lot': case 'split-lot': case 'declare-weight': return [step.item];
    case 'issue': return [''];
    default: return stoneLabels(step.stones);
  }
}

function stepsOf(one: ScenarioCase, calendar: Calendar): Happening[] {
  return one.steps.flatMap((step) => targets(step).map((target, index): Happening => ({
    kind: 'step', at: new Date(calendar.instant(step).getTime() + index * step.every * 60_000), case: one, step, target,
  })));
}

/** Everything that happened, in the order of time; what happens at one instant stays in the order of the scenario. */
export function planScenario(scenario: Scenario, calendar: Calendar): Happening[] {
  const opened = calendar.instant(scenario.laboratory.opened);
  const all: Happening[] = [
    ...scenario.instruments.map((instrument): Happening => ({ kind: 'instrument', at: opened, instrument })),
    ...scenario.clients.map((client): Happening => ({ kind: 'client', at: opened, client })),
    ...scenario.instruments.flatMap((instrument) => instrument.checks.map((check): Happening => ({ kind: 'check', at: calendar.instant(check), instrument: instrument.key, check }))),
    ...scenario.knownSamples.map((sample): Happening => ({ kind: 'sample', at: calendar.instant(sample), sample })),
    ...scenario.trials.map((trial): Happening => { const at = calendar.instant(trial); return { kind: 'trial', at, trial, on: dayInZone(at.toISOString(), scenario.laboratory.zone) }; }),
    ...scenario.cases.flatMap((one): Happening[] => [
      { kind: 'intake', at: calendar.instant(one.received), case: one, dueOn: one.dueIn === null ? null : calendar.due(one.dueIn) },
      ...stepsOf(one, calendar),
    ]),
  ];
  return all.sort((a, b) => a.at.getTime() - b.at.getTime());
}
