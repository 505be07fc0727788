import type { ColourClass } from '../domain/colour-class.ts';
import type { ConclusionId } from '../domain/conclusion.ts';
import { colourScope, NEEDED_FOR_COLOUR, outsideScopeReason, UNKNOWN_COLOUR } from './rules/colour-scope.ts';
import { compositeSuspicion, LAYER_NOT_LOOKED_FOR, layerLookedFor, SUSPECT_LAYER } from './rules/composite-suspicion.ts';
import { contradictionReasons, contradicts } from './rules/contradiction.ts';
import { diamondCheck, diamondCheckReasons } from './rules/diamond-check.ts';
import type { DiamondCheck } from './rules/diamond-check.ts';
import { documentedTogether } from './rules/documented-together.ts';
import { growthMethod } from './rules/growth-method.ts';
import { natureCase } from './rules/nature-case.ts';
import type { NatureCase } from './rules/nature-case.ts';
import { neverAloneRemarks } from './rules/never-alone.ts';
import type { RuleId } from './rules/rule-book.ts';
import { speaksAgainst } from './rules/speaks-against.ts';
import { TREATMENT_IS_A_QUESTION, TREATMENT_LEAVES_SCREENING, treatmentSuspicion } from './rules/treatment-suspicion.ts';
import { quoted, weighed } from './sentences.ts';
import { hasWeight } from './weighed-finding.ts';
import type { WeighedFinding } from './weighed-finding.ts';

export type Decision = {
  readonly conclusion: ConclusionId;
  /** The rule that had the last word. */
  readonly rule: RuleId;
  readonly reasons: readonly string[];
  readonly against: readonly string[];
  /** The findings by which that rule was met; empty where the stone stays open for want of them. */
  readonly deciding: readonly WeighedFinding[];
};

const SIDE_WORDS = { natural: 'natural growth', grown: 'growth in a laboratory' } as const;
const CLEAN = 'Nothing recorded speaks against it.';

/** What has weight, as sentences. */
const opposed = (findings: readonly WeighedFinding[]): string[] => findings.filter(hasWeight).map(weighed);

/** What decided, the rule it met, and what else speaks the same way. */
const chain = (one: NatureCase): string[] => [...one.deciding.map(weighed), one.rule, ...one.all.filter((finding) => !one.deciding.includes(finding)).map(weighed)];

const open = (rule: RuleId, reasons: readonly string[], against: readonly string[] = [], deciding: readonly WeighedFinding[] = []): Decision => ({ conclusion: 'undetermined', rule, reasons, against, deciding });

/** Findings without a weight of their own that speak against the conclusion by the table. */
function quietly(conclusion: ConclusionId, counted: readonly WeighedFinding[]): string[] {
  return speaksAgainst(conclusion, counted).filter((finding) => !hasWeight(finding)).map((finding) => `Unusual for this conclusion: ${quoted(finding)}.`);
}

function decideNatural(counted: readonly WeighedFinding[], natural: NatureCase, grown: NatureCase, passed: readonly string[]): Decision {
  const against = [...opposed(grown.all), ...quietly('natural', counted)];
  const composite = compositeSuspicion(counted);
  if (composite.length > 0) return open('layer-suspected', [...passed, SUSPECT_LAYER, ...composite.map(weighed), ...natural.all.map(weighed)], [...new Set([...composite.map(weighed), ...against])], composite);
  const lookAlike = documentedTogether(natural);
  if (lookAlike !== null) return open('documented-together', [...passed, lookAlike, ...natural.all.map(weighed)], against);
  const treatment = treatmentSuspicion(counted);
  if (treatment.state === 'suspected') {
    return { conclusion: 'out-of-scope', rule: 'treatment-suspected', reasons: [...passed, TREATMENT_LEAVES_SCREENING, ...treatment.findings.map(weighed), ...chain(natural)], against: opposed(grown.all), deciding: treatment.findings };
  }
  if (!layerLookedFor(counted)) return open('layer-not-looked-for', [...passed, ...chain(natural), LAYER_NOT_LOOKED_FOR], against);
  const question = treatment.state === 'question' ? [TREATMENT_IS_A_QUESTION, ...treatment.findings.map(weighed)] : [];
  return {
    conclusion: 'natural', rule: natural.ruleId, deciding: natural.deciding,
    reasons: [...passed, ...chain(natural), ...question, ...(against.length === 0 && question.length === 0 ? [CLEAN] : [])],
    against: [...against, ...opposed(treatment.findings)],
  };
}

function decideGrown(counted: readonly WeighedFinding[], natural: NatureCase, grown: NatureCase, passed: readonly string[]): Decision {
  const lookAlike = documentedTogether(grown);
  if (lookAlike !== null) return open('documented-together', [...passed, lookAlike, ...grown.all.map(weighed)], opposed(natural.all));
  const method = growthMethod(grown.all);
  const against = [...opposed(natural.all), ...quietly(method.conclusion, counted)];
  return {
    conclusion: method.conclusion, rule: grown.ruleId, deciding: grown.deciding, against,
    reasons: [...passed, ...chain(grown), method.reason, ...treatmentSuspicion(counted).findings.map(weighed), ...(against.length === 0 ? [CLEAN] : [])],
  };
}

function decideNature(counted: readonly WeighedFinding[], passed: readonly string[]): Decision {
  const natural = natureCase('natural', counted);
  const grown = natureCase('grown', counted);
  if (contradicts(natural, grown)) return open('contradiction', [...passed, ...contradictionReasons(natural, grown)], opposed([...natural.all, ...grown.all]));
  if (natural.met) return decideNatural(counted, natural, grown, passed);
  if (grown.met) return decideGrown(counted, natural, grown, passed);
  const sides = [natural, grown].filter((one) => one.all.length > 0);
  const why = sides.length === 0
    ? ['No counted finding speaks for an origin.']
    : sides.flatMap((one) => [...one.all.map(weighed), `Not enough for ${SIDE_WORDS[one.side]}. ${one.rule}`]);
  const remarks = neverAloneRemarks(counted);
  return open(remarks.length > 0 && sides.every((one) => one.all.length < 2) ? 'never-alone' : 'not-enough', [...passed, ...why, ...opposed(treatmentSuspicion(counted).findings), ...remarks]);
}

/** What the diamond check alone settles or leaves open; null where it has passed. */
function decideIdentity(check: DiamondCheck, counted: readonly WeighedFinding[], colour: readonly string[]): Decision | null {
  const reasons = diamondCheckReasons(check);
  switch (check.state) {
    case 'passed': return null;
    case 'not-diamond': return { conclusion: 'not-diamond', rule: 'not-diamond', reasons, against: opposed(counted.filter((finding) => finding.supports === 'diamond')), deciding: check.deciding };
    case 'contradictory': return open('diamond-contradiction', [...reasons, ...colour], opposed([...check.for, ...check.against]));
    case 'open': return open('diamond-first', [...reasons, ...colour]);
  }
}

/**
 * What counted findings amount to. Order of judgement: is it diamond, may the rules be used on this colour, do the findings agree,
 * is there enough for a nature, could it be a layer or a documented look-alike, was it treated, was a layer looked for. `counted` heaviest first, as readFindings gives it.
 */
export function decide(counted: readonly WeighedFinding[], colourClass: ColourClass): Decision {
  const check = diamondCheck(counted);
  const scope = colourScope(colourClass);
  const identity = decideIdentity(check, counted, scope === 'outside' ? [outsideScopeReason(colourClass)] : []);
  if (identity !== null) return identity;
  const reasons = diamondCheckReasons(check);
  if (scope === 'outside') return { conclusion: 'out-of-scope', rule: 'colour-outside', reasons: [...reasons, outsideScopeReason(colourClass), NEEDED_FOR_COLOUR], against: [], deciding: [] };
  if (scope === 'unknown') return open('colour-not-stated', [...reasons, UNKNOWN_COLOUR]);
  const nature = decideNature(counted, reasons);
  return { ...nature, against: [...nature.against, ...opposed(counted.filter((finding) => finding.supports === 'not-diamond'))] };
}
