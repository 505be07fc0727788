import type { FindingFact } from '../domain/finding.ts';
import type { MethodId } from '../domain/method.ts';
import type { Observation } from '../domain/observation.ts';
import { factOfCode } from '../evidence/fact-of-code.ts';
import { findingsFromObservation } from '../evidence/findings-from-observation.ts';
import type { SeededRandom } from '../spectra/simulate/seeded-random.ts';
import { chance, draw } from './draw.ts';
import type { EvaluatedKind, Weighted } from './evaluated-kind.ts';

/** How good a spectrum is: chance that a line which is there is found, and that it is found too poorly for its full weight. All judgement. */
type Quality = { readonly found: number; readonly weakened: number };
const QUALITIES: Weighted<Quality> = [
  [0.5, { found: 0.999, weakened: 0.01 }], [0.35, { found: 0.99, weakened: 0.05 }], [0.12, { found: 0.6, weakened: 0.5 }], [0.03, { found: 0.05, weakened: 0.9 }],
];
/** Share of luminescence spectra whose scale is off by more than their stated error. */
const MISCALIBRATED = 0.04;
/** What a line is then taken for, with which chance. */
const MISTAKEN: Readonly<Record<string, string>> = { 'centre:GR1': 'centre:SIV', 'centre:SIV': 'centre:GR1', 'centre:NV0': 'centre:DEF579', 'centre:DEF579': 'centre:CO580', 'centre:595': 'centre:CVD596', 'family:cvd-533-563': 'centre:CO562' };
const MISTAKEN_CHANCE = 0.3;
/** Lines that noise, foreign light or a laser's own light put into a spectrum, once in so many. */
const SPURIOUS_CHANCE = 0.006;
const SPURIOUS: readonly string[] = ['centre:H2', 'centre:595', 'centre:CVD533', 'centre:NI883', 'centre:CO580', 'centre:DEF566', 'centre:NI700'];

/** The finding of a code that the table knows; another one is a fault of the kinds' lists. */
function factOf(code: string, method: MethodId, weakened = false): FindingFact {
  const fact = factOfCode(code, method, weakened);
  if (fact === null) throw new Error(`no row for ${code}`);
  return fact;
}

function lines(r: SeededRandom, chances: Readonly<Record<string, number>>, method: MethodId): FindingFact[] {
  const quality = draw(r, QUALITIES);
  const astray = method === 'photoluminescence' && chance(r, MISCALIBRATED);
  const facts = Object.entries(chances).filter(([, p]) => chance(r, p) && chance(r, quality.found)).map(([code]) => {
    const taken = astray && chance(r, MISTAKEN_CHANCE) ? MISTAKEN[code] ?? code : code;
    return factOf(taken, method, chance(r, quality.weakened));
  });
  if (chance(r, SPURIOUS_CHANCE)) facts.push(factOf(SPURIOUS[r.below(SPURIOUS.length)]!, method, true));
  return facts.length > 0 ? facts : [factOf('centres:none', method)];
}

function infrared(r: SeededRandom, kind: EvaluatedKind): FindingFact[] {
  const quality = draw(r, QUALITIES);
  const isDiamond = kind.truth !== 'not-diamond';
  if (!chance(r, quality.found)) return [factOf('infrared:type-not-determined', 'infrared')];
  return [...(isDiamond ? [factOf('infrared:lattice', 'infrared')] : []), ...draw(r, kind.infrared).map((name) => factOf(`infrared:${name}`, 'infrared', chance(r, quality.weakened)))];
}

function identity(r: SeededRandom, kind: EvaluatedKind, method: 'raman' | 'photoluminescence'): FindingFact[] {
  const seen = chance(r, method === 'raman' ? 0.985 : 0.9);
  if (kind.truth !== 'not-diamond') return [factOf(seen ? 'diamond-line:present' : 'diamond-line:masked', method)];
  if (!seen) return [factOf('diamond-line:masked', method)];
  return [factOf('diamond-line:absent', method), ...(kind.id === 'moissanite' && method === 'raman' ? [factOf('simulant:MOISSANITE', method)] : [])];
}

const GRAVITY: Readonly<Record<string, number>> = { moissanite: 3.22, 'cubic zirconia': 5.8, glass: 2.6 };

/** What a person would write down; null for methods that yield curves. */
function observed(r: SeededRandom, kind: EvaluatedKind, method: MethodId, lamps: readonly Observation[]): Observation | null {
  const isDiamond = kind.truth !== 'not-diamond';
  switch (method) {
    case 'fluorescence-long-wave': return lamps[0]!;
    case 'fluorescence-short-wave': return lamps[1]!;
    case 'phosphorescence': {
      const [colour, seconds] = draw(r, kind.afterGlow);
      return { method, colour, seconds, strength: seconds === 0 ? 'inert' : 'moderate' };
    }
    case 'growth-pattern': return { method, pattern: draw(r, kind.pattern) };
    case 'crossed-polarisers': return { method, pattern: draw(r, kind.strain) };
    case 'magnet': return { method, response: draw(r, kind.magnet) };
    case 'microscopy': return { method, features: [draw(r, kind.features)] };
    case 'thermal-probe': return { method, reading: (isDiamond || kind.id === 'moissanite') !== chance(r, 0.02) ? 'diamond-like' : 'not-diamond-like' };
    case 'electrical-conductivity': return { method, reading: chance(r, kind.conducts) ? 'conducts' : 'does-not-conduct' };
    case 'specific-gravity': return { method, value: Number(((isDiamond ? 3.515 : GRAVITY[kind.id] ?? 4) + 0.008 * r.normal()).toFixed(3)), uncertainty: 0.01 };
    case 'refractive-index': return isDiamond || kind.id !== 'glass' ? { method, by: 'refractometer', reading: 'over-scale' } : { method, by: 'refractometer', reading: 'value', value: 1.62 };
    case 'ultraviolet-transmission': return { method, reading: draw(r, kind.transmission) };
    case 'raman': case 'photoluminescence': case 'absorption': case 'infrared': return null;
  }
}

/** What one stone of a kind shows under these methods; observations are read by the program's own rules. */
export function sampleFindings(r: SeededRandom, kind: EvaluatedKind, methods: readonly MethodId[], mounted: boolean): FindingFact[] {
  const [longColour, longStrength, shortColour, shortStrength] = draw(r, kind.lamps);
  const lamps: readonly Observation[] = [{ method: 'fluorescence-long-wave', colour: longColour, strength: longStrength }, { method: 'fluorescence-short-wave', colour: shortColour, strength: shortStrength }];
  const others: Observation[] = [];
  const facts: FindingFact[] = [];
  for (const method of methods) {
    const seen = observed(r, kind, method, lamps);
    if (seen !== null) {
      facts.push(...findingsFromObservation(seen, { colourClass: 'colourless', mounted, others }));
      others.push(seen);
    } else if (method === 'infrared') facts.push(...infrared(r, kind));
    else if (method === 'absorption') facts.push(...lines(r, kind.absorption, method));
    else if (method === 'raman') facts.push(...identity(r, kind, method));
    else facts.push(...identity(r, kind, 'photoluminescence'), ...lines(r, kind.luminescence, 'photoluminescence'));
  }
  return facts;
}
