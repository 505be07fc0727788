import { STRENGTHS, type FindingFact } from '../domain/finding.ts';

/** Where one fact stands: the curve and its place among the facts of that curve. */
type Place = { readonly curve: number; readonly fact: FindingFact };

/** Same word, same meaning: these are one finding, however many curves show it. */
const keyOf = (fact: FindingFact): string => JSON.stringify([fact.code, fact.supports, fact.method]);

/** The number that a statement gives in these words; `without` where it gives none. */
const numberIn = (fact: FindingFact, words: RegExp, without: number): number => {
  const found = words.exec(fact.statement)?.[1];
  return found === undefined ? without : Number(found);
};

const signalOf = (fact: FindingFact): number => numberIn(fact, /signal over noise (\d+)/, 0);
const uncertaintyOf = (fact: FindingFact): number => numberIn(fact, /± (\d+(?:\.\d+)?)/, Number.MAX_VALUE);

/** Below zero where `a` is to be kept before `b`: the stronger, then the one that stands out more, then the one with the smaller uncertainty. */
function compare(a: FindingFact, b: FindingFact): number {
  return STRENGTHS.indexOf(a.strength) - STRENGTHS.indexOf(b.strength) || signalOf(b) - signalOf(a) || uncertaintyOf(a) - uncertaintyOf(b);
}

/** "…: N3." of four curves as "…: N3, in 4 curves." */
const inCurves = (statement: string, curves: number): string => `${statement.replace(/\.$/, '')}, in ${curves} curves.`;

/** A statement as one curve gave it, without the number of curves that say the same. */
export const statementOfOne = (statement: string): string => statement.replace(/, in \d+ curves\.$/, '.');

/**
 * Findings of the curves of one run, in their order, where equal ones – same code, same meaning – of several curves stand only in the curve
 * that says it best, with the number of curves. What one curve alone says stays as it is.
 */
export function mergeFindings(curves: readonly (readonly FindingFact[])[]): FindingFact[][] {
  const places = new Map<string, Place[]>();
  curves.forEach((facts, curve) => {
    for (const fact of facts) places.set(keyOf(fact), [...places.get(keyOf(fact)) ?? [], { curve, fact }]);
  });
  return curves.map((facts, curve) => facts.flatMap((fact) => {
    const same = places.get(keyOf(fact))!;
    const holders = new Set(same.map((place) => place.curve));
    if (holders.size < 2) return [fact];
    // Sorting is stable: of equals the earliest is kept.
    const best = [...same].sort((a, b) => compare(a.fact, b.fact))[0]!;
    return best.curve === curve && best.fact === fact ? [{ ...fact, statement: inCurves(fact.statement, holders.size) }] : [];
  }));
}
