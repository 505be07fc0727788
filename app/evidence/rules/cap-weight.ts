import type { Strength } from '../../domain/finding.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

type Cap = { readonly code: RegExp; readonly most: Strength };

/**
 * Facts that may never weigh more, whoever recorded them. Neutral ones never decide, neither alone nor together.
 * Type IIa: about one natural diamond in fifty and nearly every colourless grown one (Wang et al., Gems & Gemology 48 (2012) 80).
 * Nitrogen-vacancy lines occur in every kind of diamond; absence depends on laser, heat and noise.
 */
const CAPS: readonly Cap[] = [
  { code: /^infrared:type-(IIa|IIb|Ib|not-determined)$/, most: 'neutral' },
  { code: /^ultraviolet:(transparent|between|edge)$/, most: 'neutral' },
  { code: /(^|[:-])(inert|absent|none|none-seen|nothing-seen)$/, most: 'neutral' },
  { code: /^centre:NV/, most: 'neutral' },
  { code: /^centre:/, most: 'strong' },
  // What a person writes in their own words is a judgement already: it may be strong, it may not decide alone.
  { code: /^(own|examiner)\b/, most: 'strong' },
];
/** Exceptions to the caps: no strain is a weak sign of HPHT growth, no diamond line and no after-glow keep their own rules. */
const UNCAPPED = /^(strain:none-seen|diamond-line:absent)$/;

const RANK: Readonly<Record<Strength, number>> = { diagnostic: 3, strong: 2, supporting: 1, neutral: 0 };

/** The finding with the weight the rules allow it. Silicon-vacancy speaks for laboratory growth, never for one method of it. */
export function capWeight(finding: WeighedFinding): WeighedFinding {
  const cap = UNCAPPED.test(finding.code) ? undefined : CAPS.find((entry) => entry.code.test(finding.code));
  const strength = cap !== undefined && RANK[cap.most] < RANK[finding.strength] ? cap.most : finding.strength;
  // Wang et al., GSA 2016, abstract 280126: silicon-vacancy in HPHT-grown stones too.
  const supports = /^centre:SIV$/.test(finding.code) && finding.supports === 'grown-cvd' ? 'grown' : finding.supports;
  return { ...finding, strength, supports: strength === 'neutral' ? 'none' : supports };
}
