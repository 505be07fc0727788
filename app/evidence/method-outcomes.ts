import type { MethodId } from '../domain/method.ts';
import type { HypothesisId } from './hypothesis.ts';

/** One thing a method can bring home, and how often it does for each hypothesis. */
export type Outcome = {
  /** Code of the finding it would be; the evidence table says what it weighs. */
  readonly code: string;
  readonly by: string;
  readonly chance: Readonly<Partial<Record<HypothesisId, number>>>;
  /** Set where the outcome needs aggregated nitrogen: a type II stone cannot give it. */
  readonly needsNitrogen?: true;
};

const c = (naturalUntreated: number, naturalTreated: number, cvd: number, cvdTreated: number, hpht: number): Outcome['chance'] =>
  ({ 'natural-untreated': naturalUntreated, 'natural-treated': naturalTreated, 'cvd-as-grown': cvd, 'cvd-treated': cvdTreated, 'hpht-grown': hpht });

const LAMPS: readonly Outcome[] = [
  { code: 'glow:long-over-short', by: 'blue stronger under long-wave', chance: c(0.2, 0.15, 0.03, 0.01, 0) },
  { code: 'glow:short-over-long', by: 'a glow stronger under short-wave', chance: c(0.03, 0.05, 0.55, 0.5, 0.6) },
];

/**
 * What each method can say of origin in a colourless stone. Chances are judgement on the shares the literature gives (sources stand
 * with the rows of the evidence table; about 35 % of natural stones fluoresce, 97 % of these blue: Eaton-Magaña et al., Gems & Gemology
 * 43 (2007); N3 in about 98 % of natural diamonds: Green et al. 2017); they only order the tests, no conclusion rests on them.
 * What is left to 1 is an outcome without weight.
 */
export const METHOD_OUTCOMES: Readonly<Record<MethodId, readonly Outcome[]>> = {
  raman: [],
  photoluminescence: [
    { code: 'centre:N3', by: 'N3 or the nickel–nitrogen family', chance: c(0.9, 0.6, 0, 0, 0.01), needsNitrogen: true },
    { code: 'centre:CVD596', by: 'the 596/597 nm pair, 468 nm or neutral silicon-vacancy', chance: c(0, 0, 0.7, 0.08, 0) },
    { code: 'centre:SIV', by: 'silicon-vacancy', chance: c(0.005, 0.005, 0.2, 0.65, 0.15) },
    { code: 'centre:NI883', by: 'nickel at 883/885 nm or cobalt lines', chance: c(0.005, 0.005, 0, 0, 0.45) },
  ],
  infrared: [
    { code: 'infrared:type-IaAB', by: 'aggregated nitrogen', chance: c(0.95, 0.6, 0, 0, 0.005), needsNitrogen: true },
    { code: 'infrared:3123', by: 'the line at 3123 cm⁻¹', chance: c(0, 0, 0.4, 0.03, 0) },
  ],
  absorption: [{ code: 'centre:N2', by: 'cape lines', chance: c(0.4, 0.3, 0, 0, 0), needsNitrogen: true }],
  'growth-pattern': [
    { code: 'pattern:octahedral-zoning', by: 'octahedral zoning or a dislocation network', chance: c(0.88, 0.85, 0.01, 0.01, 0.005) },
    { code: 'pattern:striations', by: 'striations of CVD growth', chance: c(0.005, 0.005, 0.9, 0.75, 0) },
    { code: 'pattern:cuboctahedral-sectors', by: 'cuboctahedral sectors', chance: c(0.005, 0.005, 0, 0, 0.9) },
  ],
  phosphorescence: [{ code: 'afterglow:greenish-blue', by: 'a lasting greenish-blue after-glow', chance: c(0.005, 0.005, 0.01, 0.02, 0.7) }],
  'crossed-polarisers': [
    { code: 'strain:banded', by: 'banded or tatami strain', chance: c(0.9, 0.9, 0.03, 0.2, 0.02) },
    { code: 'strain:columnar', by: 'columnar strain', chance: c(0.01, 0.01, 0.8, 0.3, 0) },
    { code: 'strain:none-seen', by: 'no strain at all', chance: c(0.02, 0.02, 0.02, 0.15, 0.9) },
  ],
  microscopy: [
    { code: 'seen:metallic-flux', by: 'metallic flux', chance: c(0.003, 0.003, 0, 0, 0.4) },
    { code: 'seen:crystal-inclusion', by: 'mineral inclusions', chance: c(0.3, 0.3, 0.01, 0.01, 0.01) },
  ],
  magnet: [{ code: 'magnet:clear', by: 'attraction by metal inclusions', chance: c(0.0005, 0.0005, 0, 0, 0.2) }],
  'fluorescence-long-wave': LAMPS,
  'fluorescence-short-wave': LAMPS,
  'ultraviolet-transmission': [{ code: 'ultraviolet:opaque', by: 'opacity at 254 nm', chance: c(0.95, 0.6, 0, 0, 0.01), needsNitrogen: true }],
  'thermal-probe': [], 'electrical-conductivity': [], 'specific-gravity': [], 'refractive-index': [],
};

/** Methods that show whether it is diamond, and by what. */
export const IDENTITY_TESTS: Readonly<Partial<Record<MethodId, string>>> = {
  raman: 'the diamond line near 1332 cm⁻¹ or an imitation’s lines', photoluminescence: 'the diamond line',
};

/** Does the method bear on origin or on whether it is diamond? The rest is not missed when it was not done. */
export const bearsOnOrigin = (method: MethodId): boolean => METHOD_OUTCOMES[method].length > 0 || IDENTITY_TESTS[method] !== undefined;
