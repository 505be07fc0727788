import type { ConclusionId } from '../domain/conclusion.ts';
import { clopperPearson, upperLimit, type Interval } from '../evaluation/clopper-pearson.ts';

/** What a known sample can be. */
export const TRUTHS = ['natural', 'grown-cvd', 'grown-hpht', 'grown-undetermined-method', 'not-diamond'] as const satisfies readonly ConclusionId[];
export type Truth = (typeof TRUTHS)[number];

/** How an examination ended: said to be natural, said to be something else, or sent on without an answer. */
export type Ending = 'passed' | 'flagged' | 'referred';

/** Outside the scope gives no answer either: both need another laboratory. */
export function endingOf(outcome: ConclusionId): Ending {
  if (outcome === 'natural') return 'passed';
  return outcome === 'undetermined' || outcome === 'out-of-scope' ? 'referred' : 'flagged';
}

/** A count of a larger count with exact two-sided 95 % limits, and the one-sided 95 % upper limit. */
export type Rate = { readonly count: number; readonly of: number; readonly limits: Interval; readonly atMost: number };
export type Endings = Readonly<Record<Ending, number>> & { readonly all: number };

export type ScreeningFigures = {
  readonly natural: Endings; readonly other: Endings; readonly byTruth: Readonly<Record<Truth, Endings>>;
  /** Not natural and said to be natural, of all that are not natural. */
  readonly falseNatural: Rate;
  /** Natural and said to be something else, of all natural ones. */
  readonly falseAlarm: Rate;
  /** Not natural and said so, of all that are not natural. */
  readonly detected: Rate;
  readonly referred: Rate; readonly referredNatural: Rate; readonly referredOther: Rate;
};

export const rate = (count: number, of: number): Rate => ({ count, of, limits: clopperPearson(count, of), atMost: upperLimit(count, of) });

const NONE: Endings = { passed: 0, flagged: 0, referred: 0, all: 0 };
const plus = (a: Endings, b: Endings): Endings => ({ passed: a.passed + b.passed, flagged: a.flagged + b.flagged, referred: a.referred + b.referred, all: a.all + b.all });

/** Rates of a screening from examinations of known samples. Referred ones stay in every denominator: who sends everything on misses nothing and helps nobody. */
export function screeningFigures(trials: readonly { readonly truth: Truth; readonly outcome: ConclusionId }[]): ScreeningFigures {
  const byTruth = Object.fromEntries(TRUTHS.map((truth) => [truth, NONE])) as Record<Truth, Endings>;
  for (const { truth, outcome } of trials) byTruth[truth] = plus(byTruth[truth], { ...NONE, [endingOf(outcome)]: 1, all: 1 });
  const { natural } = byTruth;
  const other = TRUTHS.filter((truth) => truth !== 'natural').map((truth) => byTruth[truth]).reduce(plus, NONE);
  return {
    natural, other, byTruth,
    falseNatural: rate(other.passed, other.all), falseAlarm: rate(natural.flagged, natural.all), detected: rate(other.flagged, other.all),
    referred: rate(natural.referred + other.referred, natural.all + other.all), referredNatural: rate(natural.referred, natural.all), referredOther: rate(other.referred, other.all),
  };
}

/**
 * Chance that a stone which was said to be natural is not, by Bayes' rule, where such a share of what comes in is not natural.
 * NaN where the trials say nothing on one of the two.
 * @param prevalence 0 to 1: an assumption about what is handed in
 */
export function missedAmongPassed({ natural, other }: Pick<ScreeningFigures, 'natural' | 'other'>, prevalence: number): number {
  return byBayes(other.passed / other.all, natural, prevalence);
}

/** The same where the false-natural rate is as high as its one-sided 95 % limit still allows: what few trials without a miss leave open. */
export const missedAtMost = ({ natural, falseNatural }: Pick<ScreeningFigures, 'natural' | 'falseNatural'>, prevalence: number): number =>
  byBayes(falseNatural.of === 0 ? Number.NaN : falseNatural.atMost, natural, prevalence);

function byBayes(missRate: number, natural: Endings, prevalence: number): number {
  const wrong = missRate * prevalence;
  const right = (natural.passed / natural.all) * (1 - prevalence);
  return wrong / (wrong + right);
}
