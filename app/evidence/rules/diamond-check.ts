import { quoted, weighed } from '../sentences.ts';
import { hasWeight, isHeavy, sideOf } from '../weighed-finding.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

export type DiamondCheck =
  | { readonly state: 'passed' | 'not-diamond'; readonly deciding: readonly WeighedFinding[] }
  | { readonly state: 'contradictory'; readonly for: readonly WeighedFinding[]; readonly against: readonly WeighedFinding[] }
  | { readonly state: 'open'; readonly hints: readonly WeighedFinding[] };

/** The methods whose spectra can show a Raman line. */
const LASER_METHODS: ReadonlySet<string> = new Set(['raman', 'photoluminescence']);

/** The Raman line of diamond near 1332 cm⁻¹, read from a Raman or a photoluminescence spectrum. No other proof of diamond is accepted. */
const isDiamondLine = (finding: WeighedFinding): boolean => finding.code === 'diamond-line:present' && LASER_METHODS.has(finding.method) && finding.supports === 'diamond' && isHeavy(finding);

/** Strong facts that only diamond shows: its lattice absorption, and what speaks for an origin. */
const onlyInDiamond = (finding: WeighedFinding): boolean => isHeavy(finding) && (finding.supports === 'diamond' || sideOf(finding) !== null);

/** Two strong findings against diamond from two methods, or one from a laser method, or a diagnostic one. */
function disproof(counted: readonly WeighedFinding[]): WeighedFinding[] {
  const heavy = counted.filter((finding) => finding.supports === 'not-diamond' && isHeavy(finding));
  const alone = heavy.filter((finding) => finding.strength === 'diagnostic' || LASER_METHODS.has(finding.method));
  if (alone.length > 0) return alone;
  return new Set(heavy.map((finding) => finding.method)).size >= 2 ? heavy : [];
}

/** Is it diamond? Nothing else is answered before this. */
export function diamondCheck(counted: readonly WeighedFinding[]): DiamondCheck {
  const proof = counted.filter(isDiamondLine);
  const disproved = disproof(counted);
  const heavyAgainst = counted.filter((finding) => finding.supports === 'not-diamond' && isHeavy(finding));
  if (proof.length > 0) return heavyAgainst.length === 0 ? { state: 'passed', deciding: proof } : { state: 'contradictory', for: proof, against: heavyAgainst };
  if (disproved.length > 0) {
    const contrary = counted.filter(onlyInDiamond);
    return contrary.length === 0 ? { state: 'not-diamond', deciding: disproved } : { state: 'contradictory', for: contrary, against: disproved };
  }
  return { state: 'open', hints: counted.filter((finding) => hasWeight(finding) && (finding.supports === 'diamond' || finding.supports === 'not-diamond')) };
}

/** The check in sentences. */
export function diamondCheckReasons(check: DiamondCheck): string[] {
  switch (check.state) {
    case 'passed':
      return check.deciding.slice(0, 1).map((finding) => `Diamond check passed: ${quoted(finding)}.`);
    case 'not-diamond':
      return check.deciding.map(weighed);
    case 'contradictory':
      return [
        'The diamond check contradicts itself: repeat it on this stone alone, and set aside what proves wrong.',
        `For diamond: ${check.for.map(quoted).join('; ')}.`,
        `Against diamond: ${check.against.map(quoted).join('; ')}.`,
      ];
    case 'open':
      return [
        'The diamond check has not passed: no counted Raman or photoluminescence spectrum shows the diamond line near 1332 cm⁻¹, and no other proof is accepted here.',
        ...check.hints.map((finding) => `${quoted(finding)}: not enough for this check.`),
      ];
  }
}
