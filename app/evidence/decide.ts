import type { ColourClass } from '../domain/colour-class.ts';
import type { ConclusionId } from '../domain/conclusion.ts';
import { colourScope, NEEDED_FOR_COLOUR, outsideScopeReason, UNKNOWN_COLOUR } from './rules/colour-scope.ts';
import { compositeSuspicion, SUSPECT_LAYER } from './rules/composite-suspicion.ts';
import { contradictionReasons, contradicts } from './rules/contradiction.ts';
import { diamondCheck, diamondCheckReasons } from './rules/diamond-check.ts';
import { growthMethod } from './rules/growth-method.ts';
import { natureCase } from './rules/nature-case.ts';
import type { NatureCase } from './rules/nature-case.ts';
import { neverAloneRemarks } from './rules/never-alone.ts';
import { TREATMENT_LEAVES_SCREENING, treatmentSuspicion } from './rules/treatment-suspicion.ts';
import { weighed } from './sentences.ts';
import { hasWeight } from './weighed-finding.ts';
import type { WeighedFinding } from './weighed-finding.ts';

export type Decision = { readonly conclusion: ConclusionId; readonly reasons: readonly string[]; readonly against: readonly string[] };

const SIDE_WORDS = { natural: 'natural growth', grown: 'growth in a laboratory' } as const;

/** Nothing else recorded against it, or what there is. */
const opposed = (findings: readonly WeighedFinding[]): string[] => findings.filter(hasWeight).map(weighed);

function decideNature(counted: readonly WeighedFinding[], passed: readonly string[]): Decision {
  const natural = natureCase('natural', counted);
  const grown = natureCase('grown', counted);
  const treatment = treatmentSuspicion(counted);
  if (contradicts(natural, grown)) {
    return { conclusion: 'undetermined', reasons: [...passed, ...contradictionReasons(natural, grown)], against: opposed([...natural.all, ...grown.all]) };
  }
  const chain = (one: NatureCase): string[] => [...one.deciding.map(weighed), one.rule, ...one.all.filter((finding) => !one.deciding.includes(finding)).map(weighed)];
  const composite = natural.met ? compositeSuspicion(counted) : [];
  if (composite.length > 0) return { conclusion: 'undetermined', reasons: [...passed, SUSPECT_LAYER, ...composite.map(weighed), ...natural.all.map(weighed)], against: composite.map(weighed) };
  if (natural.met) {
    if (treatment.length > 0) return { conclusion: 'out-of-scope', reasons: [...passed, TREATMENT_LEAVES_SCREENING, ...treatment.map(weighed), ...chain(natural)], against: opposed(grown.all) };
    const clean = grown.all.length === 0 ? ['Nothing recorded speaks against it.'] : [];
    return { conclusion: 'natural', reasons: [...passed, ...chain(natural), ...clean], against: opposed(grown.all) };
  }
  if (grown.met) {
    const method = growthMethod(grown.all);
    const clean = natural.all.length === 0 ? ['Nothing recorded speaks against it.'] : [];
    return { conclusion: method.conclusion, reasons: [...passed, ...chain(grown), method.reason, ...treatment.map(weighed), ...clean], against: opposed(natural.all) };
  }
  const sides = [natural, grown].filter((one) => one.all.length > 0);
  const open = sides.length === 0
    ? ['No counted finding speaks for an origin.']
    : sides.flatMap((one) => [...one.all.map(weighed), `Not enough for ${SIDE_WORDS[one.side]}. ${one.rule}`]);
  return { conclusion: 'undetermined', reasons: [...passed, ...open, ...treatment.map(weighed), ...neverAloneRemarks(counted)], against: [] };
}

/**
 * What counted findings amount to. Order of judgement: is it diamond, may the rules be used on this colour, do the findings agree,
 * is there enough for a nature. `counted` heaviest first, as readFindings gives it.
 */
export function decide(counted: readonly WeighedFinding[], colourClass: ColourClass): Decision {
  const check = diamondCheck(counted);
  const reasons = diamondCheckReasons(check);
  const scope = colourScope(colourClass);
  const opposing = (supports: WeighedFinding['supports']): string[] => opposed(counted.filter((finding) => finding.supports === supports));
  if (check.state === 'not-diamond') return { conclusion: 'not-diamond', reasons, against: opposing('diamond') };
  if (check.state !== 'passed') {
    const colour = scope === 'outside' ? [outsideScopeReason(colourClass)] : [];
    return { conclusion: 'undetermined', reasons: [...reasons, ...colour], against: check.state === 'contradictory' ? opposed([...check.for, ...check.against]) : [] };
  }
  if (scope === 'outside') return { conclusion: 'out-of-scope', reasons: [...reasons, outsideScopeReason(colourClass), NEEDED_FOR_COLOUR], against: [] };
  if (scope === 'unknown') return { conclusion: 'undetermined', reasons: [...reasons, UNKNOWN_COLOUR], against: [] };
  const nature = decideNature(counted, reasons);
  return { ...nature, against: [...nature.against, ...opposing('not-diamond')] };
}
