import type { ColourClass } from '../domain/colour-class.ts';
import type { ConclusionId } from '../domain/conclusion.ts';
import type { MethodId } from '../domain/method.ts';
import { decide } from './decide.ts';
import { evidenceRowOf } from './evidence-table.ts';
import { HYPOTHESIS_IDS } from './hypothesis.ts';
import type { HypothesisId } from './hypothesis.ts';
import { METHOD_OUTCOMES } from './method-outcomes.ts';
import type { Outcome } from './method-outcomes.ts';
import { sortFindings } from './sort-findings.ts';
import { weighHypotheses } from './weigh-hypotheses.ts';
import type { WeighedFinding } from './weighed-finding.ts';

export type Separation = {
  /** Chance that the rules settle the stone after this test, 0 to 1. */
  readonly settles: number;
  /** Expected loss of doubt between the remaining hypotheses, bits. */
  readonly bits: number;
  /** What would settle it, and all that the method can bring. */
  readonly settling: readonly string[];
  readonly brings: readonly string[];
};

const SETTLED: ReadonlySet<ConclusionId> = new Set(['natural', 'grown-cvd', 'grown-hpht', 'not-diamond']);
/** One grade is worth this factor in the odds (judgement; a method is already capped at three grades). */
const ODDS_PER_GRADE = 3;
/** Infrared or transmission said that there is no aggregated nitrogen. */
const TYPE_TWO = /^(infrared:type-(IIa|IIb)|ultraviolet:transparent)$/;

/** How likely each remaining hypothesis is taken to be when tests are compared; equal where nothing was found. Never shown as a probability. */
function shares(counted: readonly WeighedFinding[]): ReadonlyMap<HypothesisId, number> {
  const weights = weighHypotheses(counted).filter(({ id, score }) => id !== 'not-diamond' && score > -Infinity).map(({ id, score }) => [id, ODDS_PER_GRADE ** score] as const);
  const sum = weights.reduce((total, [, weight]) => total + weight, 0);
  return new Map(weights.map(([id, weight]) => [id, weight / sum]));
}

const imagined = (method: MethodId, outcome: Outcome): WeighedFinding => {
  const row = evidenceRowOf(outcome.code)!;
  return { id: '', code: outcome.code, statement: outcome.by, strength: row.most, supports: row.supports, method, counts: true, state: 'proposed', run: null };
};

const plogp = (p: number): number => (p <= 0 ? 0 : -p * Math.log2(p));

/** What a test would be worth on top of the counted findings. Sources of the chances: METHOD_OUTCOMES. */
export function expectedSeparation(method: MethodId, counted: readonly WeighedFinding[], colourClass: ColourClass): Separation {
  const typeTwo = counted.some((finding) => TYPE_TWO.test(finding.code));
  const outcomes = METHOD_OUTCOMES[method].filter((outcome) => !(typeTwo && outcome.needsNitrogen === true));
  const prior = shares(counted);
  const settledBy = outcomes.map((outcome) => SETTLED.has(decide(sortFindings([...counted, imagined(method, outcome)]), colourClass).conclusion));
  let settles = 0;
  let after = 0;
  let left = new Map(prior);
  const doubt = (joint: ReadonlyMap<HypothesisId, number>): number => {
    const total = [...joint.values()].reduce((sum, p) => sum + p, 0);
    return total <= 0 ? 0 : total * [...joint.values()].reduce((sum, p) => sum + plogp(p / total), 0);
  };
  outcomes.forEach((outcome, i) => {
    const joint = new Map([...prior].map(([id, p]) => [id, p * (outcome.chance[id] ?? 0)]));
    if (settledBy[i] === true) settles += [...joint.values()].reduce((sum, p) => sum + p, 0);
    after += doubt(joint);
    left = new Map([...left].map(([id, p]) => [id, Math.max(0, p - (joint.get(id) ?? 0))]));
  });
  const before = HYPOTHESIS_IDS.reduce((sum, id) => sum + plogp(prior.get(id) ?? 0), 0);
  return {
    settles, bits: Math.max(0, before - after - doubt(left)),
    settling: outcomes.filter((_, i) => settledBy[i] === true).map((outcome) => outcome.by), brings: outcomes.map((outcome) => outcome.by),
  };
}
