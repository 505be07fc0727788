import type { FindingFact } from '../../../../app/domain/finding.ts';
import type { Observation } from '../../../../app/domain/observation.ts';
import { findingsFromObservation } from '../../../../app/evidence/findings-from-observation.ts';
import { centre, DIAMOND, fact } from './finding-fixtures.ts';
import type { Dice } from './seeded.ts';

/** A made-up stone: what it is, and what a full set of tests would record of it. Chances are judgement; the traps are documented ones. */
export type PlantedKind = { readonly name: string; readonly truth: 'natural' | 'grown' | 'composite'; readonly trap: boolean; readonly plant: (d: Dice) => FindingFact[] };

type Lamp = [Extract<Observation, { method: 'phosphorescence' }>['colour'], Extract<Observation, { method: 'phosphorescence' }>['strength']];

const infrared = {
  Ia: fact('infrared:type-IaAB', 'natural', 'strong', 'infrared'), lowIa: fact('infrared:type-IaA', 'natural', 'supporting', 'infrared'), IIa: fact('infrared:type-IIa', 'none', 'neutral', 'infrared'),
  IIb: fact('infrared:type-IIb', 'none', 'neutral', 'infrared'), platelet: fact('infrared:platelet', 'natural', 'strong', 'infrared'), h3107: fact('infrared:3107', 'natural', 'supporting', 'infrared'),
  h3123: fact('infrared:3123', 'grown-cvd', 'strong', 'infrared'), boron: fact('infrared:boron', 'none', 'neutral', 'infrared'),
};
const opaque = fact('ultraviolet:opaque', 'natural', 'supporting', 'ultraviolet-transmission');
const transparent = fact('ultraviolet:transparent', 'none', 'neutral', 'ultraviolet-transmission');
const companions = fact('family:natural-companions', 'natural', 'strong', 'photoluminescence');
const nickelNitrogen = fact('family:nickel-nitrogen', 'natural', 'strong', 'photoluminescence');
const cape = centre('N3', 'absorption');

/** Each observation read by the program's own rules, in the order a bench works. */
function observed(...observations: Observation[]): FindingFact[] {
  return observations.flatMap((observation, i) => findingsFromObservation(observation, { colourClass: 'colourless', mounted: false, others: observations.slice(0, i) }));
}
const lamps = (long: Lamp, short: Lamp): Observation[] => [
  { method: 'fluorescence-long-wave', colour: long[0], strength: long[1] }, { method: 'fluorescence-short-wave', colour: short[0], strength: short[1] },
];
const glow = (colour: Lamp[0], seconds: number): Observation => ({ method: 'phosphorescence', colour, strength: seconds > 0 ? 'moderate' : 'inert', seconds });
const pattern = (seen: Extract<Observation, { method: 'growth-pattern' }>['pattern']): Observation => ({ method: 'growth-pattern', pattern: seen });
const strain = (seen: Extract<Observation, { method: 'crossed-polarisers' }>['pattern']): Observation => ({ method: 'crossed-polarisers', pattern: seen });
const magnet = (response: 'none' | 'weak' | 'clear'): Observation => ({ method: 'magnet', response });
const scope = (...features: Extract<Observation, { method: 'microscopy' }>['features']): Observation => ({ method: 'microscopy', features });
const INERT: Lamp = ['none', 'inert'];

const maybe = (d: Dice, p: number, ...facts: FindingFact[]): FindingFact[] => (d.chance(p) ? facts : []);
const nv = (d: Dice): FindingFact[] => [...maybe(d, 0.8, centre('NV0')), ...maybe(d, 0.8, centre('NV-'))];

export const PLANTED_KINDS: readonly PlantedKind[] = [
  {
    name: 'CVD as grown', truth: 'grown', trap: false, plant: (d) => [
      ...nv(d), ...maybe(d, 0.8, centre('SIV')), ...maybe(d, 0.6, centre('CVD596'), centre('CVD597')), ...maybe(d, 0.5, centre('CVD468')), ...maybe(d, 0.4, centre('CVD533'), centre('CVD563')),
      infrared.IIa, ...maybe(d, 0.3, infrared.h3123), transparent,
      ...observed(...lamps(d.pick([INERT, ['orange', 'weak']]), ['orange', d.pick(['weak', 'moderate'])]), glow('none', 0), pattern('striations'), strain('columnar'), magnet('none'), scope('pinpoints')),
    ],
  },
  {
    // No 596/597, no 468, no 3123, weak grey strain, green glow: looks more natural.
    name: 'CVD heated', truth: 'grown', trap: true, plant: (d) => [
      ...nv(d), ...maybe(d, 0.6, centre('SIV')), centre('H3'), ...maybe(d, 0.3, centre('H2')), infrared.IIa, ...maybe(d, 0.3, infrared.h3107), transparent,
      ...observed(...lamps(INERT, d.pick([INERT, ['yellow-green', 'weak']])), glow('blue', d.pick([0, 0, 3])), pattern(d.pick(['striations', 'none-seen', 'other'])), strain(d.pick(['mottled', 'none-seen', 'other'])), magnet('none'), scope('nothing-seen')),
    ],
  },
  {
    // Blue band at 435 nm beside 499.6: resembles natural type IIa.
    name: 'CVD with a blue glow', truth: 'grown', trap: true, plant: (d) => [
      ...nv(d), ...maybe(d, 0.5, centre('SIV')), ...maybe(d, 0.8, centre('CVD499')), infrared.IIa, transparent,
      ...observed(...lamps(['blue', d.pick(['moderate', 'strong'])], ['blue', 'weak']), glow('none', 0), pattern(d.pick(['striations', 'none-seen', 'dislocation-network'])), strain(d.pick(['columnar', 'other'])), scope('nothing-seen')),
    ],
  },
  {
    name: 'CVD irradiated', truth: 'grown', trap: true, plant: (d) => [
      ...nv(d), centre('GR1'), ...maybe(d, 0.6, centre('D490')), ...maybe(d, 0.3, centre('595')), infrared.IIa, transparent,
      ...observed(...lamps(INERT, INERT), glow('none', 0), pattern(d.pick(['none-seen', 'striations'])), strain(d.pick(['columnar', 'mottled'])), scope('nothing-seen')),
    ],
  },
  {
    name: 'HPHT-grown', truth: 'grown', trap: false, plant: (d) => [
      ...maybe(d, 0.5, centre('NI883')), ...maybe(d, 0.2, centre('SIV')), ...maybe(d, 0.5, centre('NV-')), d.pick([infrared.IIa, infrared.IIb]), transparent,
      ...observed(...lamps(INERT, ['greenish-blue', d.pick(['weak', 'moderate'])]), glow('greenish-blue', d.pick([5, 40, 120])), pattern('cuboctahedral-sectors'), strain('none-seen'), magnet(d.pick(['none', 'weak', 'clear'])), scope(d.pick(['metallic-flux', 'nothing-seen', 'pinpoints']))),
    ],
  },
  {
    // Irradiation took the after-glow; strain around metal.
    name: 'HPHT-grown, irradiated', truth: 'grown', trap: true, plant: (d) => [
      centre('GR1'), ...maybe(d, 0.5, centre('NV-')), ...maybe(d, 0.3, centre('NI883')), infrared.IIa, transparent,
      ...observed(...lamps(INERT, ['red', 'weak']), glow('none', 0), pattern(d.pick(['cuboctahedral-sectors', 'none-seen'])), strain(d.pick(['none-seen', 'banded', 'mottled'])), magnet('none'), scope('nothing-seen')),
    ],
  },
  {
    // Heat aggregated what little nitrogen there was: N3 in the luminescence, nickel–nitrogen lines, 3107.
    name: 'HPHT-grown, annealed hard', truth: 'grown', trap: true, plant: (d) => [
      ...maybe(d, 0.7, centre('N3')), ...maybe(d, 0.3, nickelNitrogen), ...maybe(d, 0.5, centre('NI883')), centre('H3'), d.pick([infrared.IIa, infrared.lowIa]), ...maybe(d, 0.3, infrared.h3107), d.pick([transparent, fact('ultraviolet:between', 'none', 'neutral', 'ultraviolet-transmission')]),
      ...observed(...lamps(INERT, ['green', 'weak']), glow('greenish-blue', d.pick([0, 3, 30])), pattern(d.pick(['cuboctahedral-sectors', 'none-seen'])), strain('none-seen'), magnet(d.pick(['none', 'weak'])), scope(d.pick(['metallic-flux', 'nothing-seen']))),
    ],
  },
  {
    // Full cape spectrum of the core; the layer shows itself at least once among its own tests.
    name: 'CVD layer on a natural core', truth: 'composite', trap: true, plant: (d) => [
      centre('N3'), cape, infrared.Ia, ...maybe(d, 0.5, infrared.platelet), infrared.boron, opaque, centre('SIV'), ...maybe(d, 0.4, centre('CVD596')),
      ...observed(...lamps(['blue', 'strong'], ['blue', 'weak']), glow('none', 0), pattern('layer-boundary'), strain(d.pick(['banded', 'columnar'])), scope('crystal-inclusion')),
    ],
  },
  {
    name: 'natural Ia', truth: 'natural', trap: false, plant: (d) => [
      ...maybe(d, 0.95, centre('N3')), ...maybe(d, 0.4, nickelNitrogen), ...maybe(d, 0.4, centre('H3')), ...maybe(d, 0.5, cape), infrared.Ia, ...maybe(d, 0.6, infrared.platelet), ...maybe(d, 0.6, infrared.h3107), opaque,
      ...observed(...(d.chance(0.35) ? lamps(['blue', d.pick(['weak', 'moderate', 'strong'])], d.pick([INERT, ['blue', 'very-weak']])) : lamps(INERT, INERT)), glow('none', 0), pattern('octahedral-zoning'), strain(d.pick(['banded', 'mottled'])), magnet('none'), scope(d.pick(['crystal-inclusion', 'feather', 'nothing-seen']))),
    ],
  },
  {
    name: 'natural Ia without strain', truth: 'natural', trap: true, plant: (d) => [
      centre('N3'), infrared.Ia, opaque, ...observed(...lamps(INERT, INERT), glow('none', 0), pattern(d.pick(['octahedral-zoning', 'cuboctahedral-sectors'])), strain('none-seen'), magnet('none'), scope('pinpoints')),
    ],
  },
  {
    name: 'natural IIa', truth: 'natural', trap: false, plant: (d) => [
      ...nv(d), ...maybe(d, 0.6, centre('GR1')), ...maybe(d, 0.6, centre('DEF579')), infrared.IIa, transparent,
      ...observed(...lamps(d.pick([INERT, ['blue', 'weak'], ['orange', 'weak']]), d.pick([INERT, ['blue', 'weak']])), glow('none', 0), pattern(d.pick(['dislocation-network', 'dislocation-network', 'none-seen'])), strain('tatami'), magnet('none'), scope('nothing-seen')),
    ],
  },
  {
    // Silicon-vacancy with its natural companions, olivine; nickel 883/885 in some.
    name: 'natural IIa with silicon', truth: 'natural', trap: true, plant: (d) => [
      centre('SIV'), ...maybe(d, 0.7, companions), ...maybe(d, 0.3, centre('NI883')), infrared.IIa, transparent,
      ...observed(...lamps(INERT, INERT), glow('none', 0), pattern('dislocation-network'), strain('tatami'), scope('crystal-inclusion')),
    ],
  },
  {
    name: 'natural IIa with blue after-glow and nickel', truth: 'natural', trap: true, plant: (d) => [
      ...maybe(d, 0.7, centre('NI883')), ...maybe(d, 0.6, centre('GR1')), infrared.IIa, transparent,
      ...observed(...lamps(['blue', 'weak'], ['blue', 'moderate']), glow('blue', d.pick([15, 60])), pattern('dislocation-network'), strain('tatami'), scope('nothing-seen')),
    ],
  },
  {
    name: 'natural IIa, heated', truth: 'natural', trap: true, plant: (d) => [
      centre('NV-'), centre('H3'), ...maybe(d, 0.5, centre('H2')), infrared.IIa, transparent,
      ...observed(...lamps(INERT, INERT), glow('none', 0), pattern('dislocation-network'), strain('tatami'), scope(d.pick(['graphitised-fracture', 'nothing-seen']))),
    ],
  },
];

export { DIAMOND };
