import { describe, expect, test } from 'vitest';
import { METHOD_IDS } from '../../../../app/domain/method.ts';
import { ROLES } from '../../../../app/domain/role.ts';
import { instrumentStateAt } from '../../../../app/runs/instrument-state.ts';
import { loadScenario } from '../../../../main/demonstration/load-scenario.ts';
import { planScenario, stoneLabels, type Happening } from '../../../../main/demonstration/plan-scenario.ts';
import { scenarioSchema } from '../../../../main/demonstration/scenario-schema.ts';
import { scenarioCalendar } from '../../../../main/demonstration/working-days.ts';

const scenario = loadScenario();
const DAY_MS = 86_400_000;
/** Every day of more than a year: weekends, month ends, a leap day and both changes of the clocks among them. */
const DAYS = Array.from({ length: 400 }, (_, i) => new Date(Date.parse('2027-11-01T00:20:00.000Z') + i * DAY_MS));
/** Two weeks around New Year, the two changes of the clocks, and midsummer. */
const FORTNIGHTS = DAYS.filter((day) => ['2027-12-27', '2028-03-22', '2028-06-20', '2028-10-25'].some((from) => day.getTime() >= Date.parse(from) && day.getTime() < Date.parse(from) + 14 * DAY_MS));
const planOn = (now: Date): Happening[] => planScenario(scenario, scenarioCalendar(now, scenario.laboratory.zone));

/** State of an instrument at an instant, from the checks of a plan. */
function stateOf(plan: readonly Happening[], key: string, at: Date): string {
  const { checkEveryDays } = scenario.instruments.find((one) => one.key === key)!;
  const last = plan.filter((h) => h.kind === 'check' && h.instrument === key && h.at <= at).at(-1);
  return instrumentStateAt(last?.kind === 'check' ? { at: last.at.toISOString(), passed: last.check.passed } : null, checkEveryDays, at.toISOString());
}

function used(happening: Happening): string | null {
  if (happening.kind !== 'step') return null;
  if (happening.step.do === 'measure') return scenario.setups[happening.step.setup]!.instrument;
  return happening.step.do === 'observe' ? happening.step.instrument : null;
}

describe('the scenario', () => {
  test('is large enough to look around in', () => {
    const items = scenario.cases.flatMap((one) => one.parcels.flatMap((parcel) => parcel.items));
    expect(scenario.cases.length).toBeGreaterThanOrEqual(7);
    expect(items.reduce((sum, item) => sum + item.stones.length, 0)).toBeGreaterThanOrEqual(40);
    expect(new Set(items.map((item) => item.kind))).toEqual(new Set(['loose', 'jewellery', 'lot']));
    expect(scenario.people).toHaveLength(6);
    expect(new Set(scenario.people.flatMap((person) => person.roles))).toEqual(new Set(ROLES));
  });

  test('uses every method', () => {
    const methods = scenario.cases.flatMap((one) => one.steps).flatMap((step) => step.do === 'measure' ? [scenario.setups[step.setup]!.method] : step.do === 'observe' ? [step.method] : []);
    expect([...new Set(methods)].sort()).toEqual([...METHOD_IDS].sort());
  });

  test('says of everything that it is invented', () => {
    expect(scenario.laboratory.address).toContain('Invented for the demonstration');
    for (const client of scenario.clients) expect(client.note).toContain('invented for the demonstration');
    for (const instrument of scenario.instruments) expect(instrument.serial).toContain('invented');
  });

  test('a wrong scenario is refused', () => {
    expect(scenarioSchema.safeParse({ ...scenario, cases: [{ key: 'x' }] }).success).toBe(false);
  });

  test('lies behind the clock and runs forward on any day it is built', () => {
    for (const now of DAYS) {
      const plan = planOn(now);
      expect(plan.every((happening, i) => happening.at < now && (i === 0 || plan[i - 1]!.at <= happening.at))).toBe(true);
      for (const one of scenario.cases) {
        const own = plan.filter((h) => (h.kind === 'intake' || h.kind === 'step') && h.case === one);
        expect(own[0]?.kind).toBe('intake');
      }
    }
  }, 60_000);

  test('instruments are in order when they are used, but for the two that are meant not to be', () => {
    for (const now of FORTNIGHTS) {
      const plan = planOn(now);
      const wrong = plan.flatMap((happening) => {
        const key = used(happening);
        const state = key === null ? 'in-order' : stateOf(plan, key, happening.at);
        return state === 'in-order' || happening.kind !== 'step' ? [] : [`${happening.case.key} ${key!} ${state}`];
      });
      expect(new Set(wrong)).toEqual(new Set(['belltower-lot visible lapsed', 'thistledown-brooch viewer-2 never-checked']));
    }
  });
});

test('ranges of labels are written out, and nonsense is a fault', () => {
  expect(stoneLabels(['A-2..A-4', 'B-1'])).toEqual(['A-2', 'A-3', 'A-4', 'B-1']);
  expect(() => stoneLabels(['A-2..B-4'])).toThrow('is not a range');
  expect(() => stoneLabels(['A-4..A-2'])).toThrow('is not a range');
});
