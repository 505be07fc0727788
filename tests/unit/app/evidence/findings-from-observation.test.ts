import { describe, expect, test } from 'vitest';
import { findingFact } from '../../../../app/domain/finding.ts';
import type { FindingFact } from '../../../../app/domain/finding.ts';
import { GLOW_COLOURS, GLOW_STRENGTHS, observation as observationSchema } from '../../../../app/domain/observation.ts';
import type { Observation } from '../../../../app/domain/observation.ts';
import { findingsFromObservation } from '../../../../app/evidence/findings-from-observation.ts';
import type { ObservationContext } from '../../../../app/evidence/findings-from-observation.ts';

const context = (more: Partial<ObservationContext> = {}): ObservationContext => ({ colourClass: 'colourless', mounted: false, others: [], ...more });
const read = (observation: Observation, more: Partial<ObservationContext> = {}): FindingFact[] => findingsFromObservation(observation, context(more));
const long = (colour: (typeof GLOW_COLOURS)[number], strength: (typeof GLOW_STRENGTHS)[number]): Observation => ({ method: 'fluorescence-long-wave', colour, strength });
const short = (colour: (typeof GLOW_COLOURS)[number], strength: (typeof GLOW_STRENGTHS)[number]): Observation => ({ method: 'fluorescence-short-wave', colour, strength });

/** Every observation the schema allows, one field value at a time. */
const ALL: Observation[] = [
  ...GLOW_COLOURS.flatMap((colour) => GLOW_STRENGTHS.flatMap((strength) => [long(colour, strength), short(colour, strength), ...[0, 5, 60].map((seconds): Observation => ({ method: 'phosphorescence', colour, strength, seconds }))])),
  ...(['octahedral-zoning', 'dislocation-network', 'striations', 'cuboctahedral-sectors', 'layer-boundary', 'none-seen', 'other'] as const).map((pattern): Observation => ({ method: 'growth-pattern', pattern })),
  ...(['banded', 'mottled', 'tatami', 'columnar', 'none-seen', 'other'] as const).map((pattern): Observation => ({ method: 'crossed-polarisers', pattern })),
  ...(['none', 'weak', 'clear'] as const).map((response): Observation => ({ method: 'magnet', response })),
  ...(['metallic-flux', 'pinpoints', 'crystal-inclusion', 'feather', 'graphitised-fracture', 'green-graining', 'graining', 'inscription', 'facet-doubling', 'gas-bubbles', 'nothing-seen'] as const).map((feature): Observation => ({ method: 'microscopy', features: [feature] })),
  ...(['diamond-like', 'not-diamond-like'] as const).map((reading): Observation => ({ method: 'thermal-probe', reading })),
  ...(['conducts', 'does-not-conduct'] as const).map((reading): Observation => ({ method: 'electrical-conductivity', reading })),
  ...[3.515, 3.53, 3.56, 5.8].map((value): Observation => ({ method: 'specific-gravity', value, uncertainty: 0.01 })),
  ...(['opaque', 'partly', 'transparent'] as const).map((reading): Observation => ({ method: 'ultraviolet-transmission', reading })),
];

test('every observation gives valid findings of its own method, none of them diagnostic', () => {
  for (const observation of ALL) {
    expect(observationSchema.safeParse(observation).success).toBe(true);
    const facts = read(observation);
    expect(facts.length).toBeGreaterThan(0);
    for (const fact of facts) {
      expect(findingFact.safeParse(fact).success, JSON.stringify(fact)).toBe(true);
      expect(fact.method).toBe(observation.method);
      expect(fact.strength).not.toBe('diagnostic');
      expect(fact.supports === 'none').toBe(fact.strength === 'neutral');
      expect(fact.caution, fact.code).toBeTruthy();
    }
  }
});

test('one lamp alone never speaks for an origin', () => {
  for (const observation of ALL.filter((one) => one.method.startsWith('fluorescence'))) for (const fact of read(observation)) expect(fact.supports).toBe('none');
});

describe('both lamps', () => {
  test('short-wave stronger supports laboratory growth, whichever was recorded last', () => {
    const facts = read(short('orange', 'weak'), { others: [long('none', 'inert')] });
    expect(facts[1]).toMatchObject({ code: 'glow:short-over-long', statement: 'Short-wave glow stronger than long-wave, orange (short-wave weak orange, long-wave inert).', supports: 'grown', strength: 'supporting' });
    expect(read(long('none', 'inert'), { others: [short('orange', 'weak')] })[1]!.code).toBe('glow:short-over-long');
  });
  test('a clear blue stronger under long-wave supports natural growth', () => {
    expect(read(short('blue', 'weak'), { others: [long('blue', 'strong')] })[1]).toMatchObject({ supports: 'natural', strength: 'supporting' });
    expect(read(short('blue', 'very-weak'), { others: [long('blue', 'weak')] })[1]!.supports).toBe('none');
    expect(read(short('yellow', 'weak'), { others: [long('yellow', 'strong')] })[1]!.supports).toBe('none');
  });
  test('equal or both inert says nothing', () => {
    expect(read(short('blue', 'weak'), { others: [long('blue', 'weak')] })[1]!.supports).toBe('none');
    expect(read(short('none', 'inert'), { others: [long('none', 'inert')] })[1]).toMatchObject({ code: 'glow-both:inert', supports: 'none' });
  });
  test('the latest exposure is compared', () => {
    expect(read(short('blue', 'weak'), { others: [long('none', 'inert'), long('blue', 'very-strong')] })[1]!.code).toBe('glow:long-over-short');
  });
});

test('a lasting greenish-blue after-glow is strong for HPHT growth, a short or absent one says nothing', () => {
  const after = (colour: (typeof GLOW_COLOURS)[number], seconds: number): FindingFact => read({ method: 'phosphorescence', colour, strength: 'moderate', seconds })[0]!;
  expect(after('greenish-blue', 60)).toMatchObject({ supports: 'grown-hpht', strength: 'strong' });
  expect(after('blue', 60)).toMatchObject({ supports: 'grown-hpht', strength: 'supporting' });
  expect([after('greenish-blue', 10), after('greenish-blue', 0), after('red', 60), after('none', 60)].map((fact) => fact.supports)).toEqual(['none', 'none', 'none', 'none']);
});

test.each(['yellow-orange', 'brown', 'pink-red-purple', 'blue-grey', 'green', 'black', 'unknown'] as const)('rules for colourless stones are not applied to %s', (colourClass) => {
  const facts = [
    ...read(short('orange', 'weak'), { colourClass, others: [long('none', 'inert')] }), ...read({ method: 'phosphorescence', colour: 'greenish-blue', strength: 'strong', seconds: 60 }, { colourClass }),
    ...read({ method: 'ultraviolet-transmission', reading: 'opaque' }, { colourClass }),
  ];
  for (const fact of facts) expect(fact.supports).toBe('none');
  expect(facts.map((fact) => fact.caution).join(' ')).toContain('holds for colourless stones only');
});

test('specific gravity: as diamond within 0.02 or twice the uncertainty', () => {
  const gravity = (value: number, uncertainty: number): FindingFact => read({ method: 'specific-gravity', value, uncertainty })[0]!;
  expect(gravity(3.53, 0.003)).toMatchObject({ supports: 'diamond', strength: 'supporting' });
  expect(gravity(3.56, 0.003)).toMatchObject({ supports: 'not-diamond', strength: 'supporting' });
  expect(gravity(3.56, 0.03)).toMatchObject({ supports: 'diamond' });
  expect(gravity(5.8, 0.05)).toMatchObject({ supports: 'not-diamond', strength: 'strong' });
});

test('several features under the microscope are one fact each', () => {
  const facts = read({ method: 'microscopy', features: ['inscription', 'metallic-flux', 'inscription'] });
  expect(facts.map((fact) => fact.code)).toEqual(['seen:metallic-flux', 'seen:inscription']);
  expect(facts[1]!.caution).toContain('a claim');
});
