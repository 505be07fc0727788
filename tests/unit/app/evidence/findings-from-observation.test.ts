import { describe, expect, test } from 'vitest';
import { findingFact } from '../../../../app/domain/finding.ts';
import type { FindingFact } from '../../../../app/domain/finding.ts';
import type { GLOW_COLOURS, GLOW_STRENGTHS } from '../../../../app/domain/observation.ts';
import { observation as observationSchema } from '../../../../app/domain/observation.ts';
import type { Observation } from '../../../../app/domain/observation.ts';
import { findingsFromObservation } from '../../../../app/evidence/findings-from-observation.ts';
import { EVERY_OBSERVATION } from './every-observation.ts';
import type { ObservationContext } from '../../../../app/evidence/findings-from-observation.ts';

const context = (more: Partial<ObservationContext> = {}): ObservationContext => ({ colourClass: 'colourless', mounted: false, others: [], ...more });
const read = (observation: Observation, more: Partial<ObservationContext> = {}): FindingFact[] => findingsFromObservation(observation, context(more));
const long = (colour: (typeof GLOW_COLOURS)[number], strength: (typeof GLOW_STRENGTHS)[number]): Observation => ({ method: 'fluorescence-long-wave', colour, strength });
const short = (colour: (typeof GLOW_COLOURS)[number], strength: (typeof GLOW_STRENGTHS)[number]): Observation => ({ method: 'fluorescence-short-wave', colour, strength });

test('every observation gives valid findings of its own method, none of them diagnostic', () => {
  for (const observation of EVERY_OBSERVATION) {
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
  for (const observation of EVERY_OBSERVATION.filter((one) => one.method.startsWith('fluorescence'))) for (const fact of read(observation)) expect(fact.supports).toBe('none');
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

describe('refractive index', () => {
  const index = (value: number | undefined, by: 'refractometer' | 'reflectivity'): FindingFact => read({ method: 'refractive-index', by, reading: value === undefined ? 'over-scale' : 'value', value })[0]!;
  test('a refractometer can only exclude diamond; above its scale it says nothing', () => {
    expect(index(1.762, 'refractometer')).toMatchObject({ code: 'index:not-diamond', strength: 'strong', supports: 'not-diamond' });
    expect(index(undefined, 'refractometer')).toMatchObject({ code: 'index:over-scale', supports: 'none' });
  });
  test('by reflectivity 2.417 is as diamond, and another value speaks against it without proving it', () => {
    expect(index(2.417, 'reflectivity')).toMatchObject({ code: 'index:as-diamond', strength: 'supporting', supports: 'diamond' });
    expect(index(2.16, 'reflectivity')).toMatchObject({ code: 'index:not-diamond', strength: 'supporting' });
  });
  test('a value is asked for unless the reading was above the scale', () => {
    expect(observationSchema.safeParse({ method: 'refractive-index', by: 'refractometer', reading: 'value' }).success).toBe(false);
  });
});
