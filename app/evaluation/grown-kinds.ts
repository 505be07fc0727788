import { INERT, NO_GLOW } from './evaluated-kind.ts';
import type { EvaluatedKind } from './evaluated-kind.ts';

const CVD: EvaluatedKind = {
  id: 'CVD as grown', truth: 'cvd', share: 11, trap: null, source: 'Eaton-Magaña & Shigley, Gems & Gemology 52 (2016) 222; Wang et al., Gems & Gemology 48 (2012) 80; Martineau et al. 2004 (from memory); the rest is judgement', simulated: 'cvd-as-grown',
  luminescence: { 'centre:NV0': 0.95, 'centre:NV-': 0.95, 'centre:SIV': 0.85, 'centre:CVD596': 0.6, 'centre:CVD597': 0.6, 'centre:CVD468': 0.45, 'family:cvd-533-563': 0.4 },
  absorption: { 'centre:SIV': 0.1, 'band:BAND520': 0.1 },
  infrared: [[0.62, ['type-IIa']], [0.35, ['type-IIa', '3123']], [0.03, ['type-not-determined']]],
  transmission: [[0.93, 'transparent'], [0.07, 'partly']],
  lamps: [[0.45, ['none', 'inert', 'orange', 'weak']], [0.25, ['orange', 'weak', 'orange', 'moderate']], [0.3, INERT]],
  afterGlow: [[0.95, NO_GLOW], [0.05, ['blue', 3]]],
  pattern: [[0.88, 'striations'], [0.09, 'none-seen'], [0.01, 'dislocation-network'], [0.02, 'other']],
  strain: [[0.8, 'columnar'], [0.1, 'mottled'], [0.03, 'none-seen'], [0.07, 'other']],
  magnet: [[1, 'none']],
  features: [[0.4, 'pinpoints'], [0.02, 'crystal-inclusion'], [0.58, 'nothing-seen']],
  conducts: 0,
};
const CVD_TREATED: EvaluatedKind = {
  ...CVD, id: 'CVD, HPHT-treated', share: 6, trap: 'no 468, no 596/597, no 3123, low strain', source: 'Gems & Gemology Lab Notes, Winter 2008 and Summer 2022; Wang et al., Gems & Gemology 48 (2012) 80', simulated: 'cvd-treated',
  luminescence: { 'centre:NV0': 0.8, 'centre:NV-': 0.85, 'centre:SIV': 0.75, 'centre:H3': 0.9, 'centre:CVD596': 0.03, 'centre:H2': 0.1 }, absorption: { 'centre:H3': 0.2, 'centre:H2': 0.1 },
  infrared: [[0.75, ['type-IIa']], [0.22, ['type-IIa', '3107']], [0.03, ['type-not-determined']]],
  lamps: [[0.7, ['none', 'inert', 'yellow-green', 'weak']], [0.3, INERT]], afterGlow: [[0.85, NO_GLOW], [0.15, ['blue', 6]]],
  pattern: [[0.7, 'striations'], [0.25, 'none-seen'], [0.02, 'dislocation-network'], [0.03, 'other']], strain: [[0.35, 'mottled'], [0.2, 'columnar'], [0.25, 'none-seen'], [0.2, 'other']],
};
const HPHT: EvaluatedKind = {
  id: 'HPHT-grown, colourless', truth: 'hpht', share: 9, trap: null, source: 'Eaton-Magaña, Shigley, Breeding, Gems & Gemology 53 (2017) 262; D’Haenens-Johansson et al., Gems & Gemology 51 (2015); Shao et al., Carbon (2020); the rest is judgement', simulated: 'hpht',
  luminescence: { 'centre:NI883': 0.45, 'family:nickel-grown': 0.2, 'centre:SIV': 0.15, 'centre:NV-': 0.3, 'centre:NV0': 0.3 },
  absorption: {},
  infrared: [[0.55, ['type-IIa']], [0.42, ['type-IIb']], [0.03, ['type-not-determined']]],
  transmission: [[0.95, 'transparent'], [0.05, 'partly']],
  lamps: [[0.4, ['none', 'inert', 'greenish-blue', 'weak']], [0.2, ['none', 'inert', 'blue', 'moderate']], [0.1, ['none', 'inert', 'orange', 'weak']], [0.3, INERT]],
  afterGlow: [[0.65, ['greenish-blue', 60]], [0.1, ['greenish-blue', 8]], [0.05, ['orange', 20]], [0.2, NO_GLOW]],
  pattern: [[0.92, 'cuboctahedral-sectors'], [0.07, 'none-seen'], [0.01, 'other']],
  strain: [[0.93, 'none-seen'], [0.05, 'other'], [0.005, 'banded'], [0.015, 'mottled']],
  magnet: [[0.75, 'none'], [0.15, 'weak'], [0.1, 'clear']],
  features: [[0.35, 'metallic-flux'], [0.25, 'pinpoints'], [0.4, 'nothing-seen']],
  conducts: 0.3,
};

/** Laboratory-grown stones, plain ones first, then documented exceptions; a layer on a natural core is among them. Chances: literature named in `source`, the rest judgement. */
export const GROWN_KINDS: readonly EvaluatedKind[] = [
  CVD,
  CVD_TREATED,
  HPHT,
  { ...HPHT, id: 'HPHT-grown with boron', share: 2, trap: 'IIb', simulated: 'hpht-iib', infrared: [[1, ['type-IIb']]], conducts: 0.8 },
  {
    ...CVD, id: 'CVD with a blue glow', share: 1, trap: 'blue 435 nm band like natural IIa', source: 'Anomalous green luminescent properties in CVD synthetic diamonds, phys. status solidi',
    luminescence: { 'centre:NV0': 0.8, 'centre:NV-': 0.7, 'centre:SIV': 0.5, 'centre:CVD499': 0.85, 'centre:H3': 0.5 }, lamps: [[0.6, ['blue', 'moderate', 'blue', 'weak']], [0.4, ['blue', 'strong', 'blue', 'moderate']]],
    pattern: [[0.75, 'striations'], [0.2, 'none-seen'], [0.05, 'dislocation-network']], strain: [[0.6, 'columnar'], [0.2, 'mottled'], [0.2, 'other']],
  },
  {
    ...CVD, id: 'CVD without silicon', share: 1.5, trap: 'NV without silicon', source: 'judgement on Eaton-Magaña & Shigley, Gems & Gemology 52 (2016) 222',
    luminescence: { 'centre:NV0': 1, 'centre:NV-': 1, 'centre:CVD596': 0.4, 'centre:CVD597': 0.4, 'centre:CVD468': 0.3 },
  },
  {
    ...CVD, id: 'CVD, irradiated', share: 1, trap: 'dim pattern, GR1 over silicon', source: 'Gems & Gemology Lab Notes, Fall 2014; J. Gemmology 37(3) (2020) 86–88',
    luminescence: { 'centre:GR1': 1, 'centre:SIV': 0.15, 'centre:D490': 0.5, 'centre:595': 0.3, 'centre:NV0': 0.7, 'centre:3H': 0.4 }, absorption: { 'centre:GR1': 0.8, 'centre:595': 0.4 }, pattern: [[0.4, 'striations'], [0.6, 'none-seen']],
  },
  {
    ...HPHT, id: 'HPHT-grown, irradiated melee', share: 1, trap: 'after-glow quenched, red glow', source: 'J. Gemmology 38(2) (2022) 128', luminescence: { 'centre:GR1': 1, 'centre:NI883': 0.3, 'centre:NV-': 0.6 },
    lamps: [[0.7, ['none', 'inert', 'red', 'weak']], [0.3, INERT]], afterGlow: [[1, NO_GLOW]], pattern: [[0.75, 'cuboctahedral-sectors'], [0.25, 'none-seen']],
  },
  {
    ...HPHT, id: 'HPHT-grown with strain', share: 0.5, trap: 'strain in HPHT-grown', source: 'McElhenny & Eaton-Magaña, Gems & Gemology Lab Notes, Winter 2018', strain: [[0.5, 'banded'], [0.5, 'mottled']],
  },
  {
    ...HPHT, id: 'HPHT-grown, annealed to the extreme', share: 1, trap: 'A aggregates, N3, nickel–nitrogen and 3107 made in a press', source: 'Collins & Stanley, J. Phys. D 18 (1985) 2537; Day et al., Diamond Relat. Mater. 2024; kinetics of Taylor et al. 1990 (from memory) make B aggregates below 10 %',
    luminescence: { 'centre:N3': 0.5, 'family:nickel-nitrogen': 0.3, 'centre:H3': 0.9, 'centre:NI883': 0.2, 'family:cobalt': 0.1, 'centre:H2': 0.2 }, absorption: { 'centre:N3': 0.15, 'centre:H2': 0.2, 'centre:H3': 0.4 },
    infrared: [[0.447, ['type-IaA']], [0.2, ['type-IaA', '3107']], [0.3, ['type-IIa']], [0.05, ['type-not-determined']], [0.003, ['type-IaAB']]], transmission: [[0.5, 'opaque'], [0.4, 'partly'], [0.1, 'transparent']],
    lamps: [[0.6, ['none', 'inert', 'green', 'weak']], [0.1, ['blue', 'weak', 'none', 'inert']], [0.3, INERT]], afterGlow: [[0.8, NO_GLOW], [0.2, ['greenish-blue', 20]]],
  },
  {
    ...CVD_TREATED, id: 'CVD with H3 and H2', share: 1, trap: 'H3 in laboratory-grown', source: 'Wang et al., Gems & Gemology 48 (2012) 80', luminescence: { ...CVD_TREATED.luminescence, 'centre:H3': 1, 'centre:H2': 0.5, 'centre:SIV': 0.5 },
  },
  {
    ...CVD, id: 'CVD layer on a natural core', truth: 'layer', share: 0.5, trap: 'natural core under a CVD layer', source: 'Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019; IGC 2023 (hybrid diamond): the layers studied all showed silicon-vacancy', simulated: undefined,
    luminescence: { 'centre:N3': 0.9, 'centre:SIV': 0.99, 'centre:NV0': 0.9, 'centre:NV-': 0.9, 'centre:CVD596': 0.4, 'centre:H3': 0.4 }, absorption: { 'centre:N3': 0.7, 'centre:N2': 0.5 },
    infrared: [[0.5, ['type-IaAB', 'platelet', 'boron']], [0.3, ['type-IaAB', 'platelet', '3107']], [0.2, ['type-IaAB', 'boron']]], transmission: [[1, 'opaque']],
    lamps: [[0.4, ['blue', 'strong', 'blue', 'weak']], [0.6, INERT]], afterGlow: [[0.7, NO_GLOW], [0.3, ['greenish-blue', 15]]],
    pattern: [[0.92, 'layer-boundary'], [0.05, 'octahedral-zoning'], [0.03, 'none-seen']], strain: [[0.6, 'banded'], [0.2, 'columnar'], [0.2, 'mottled']], features: [[0.4, 'crystal-inclusion'], [0.6, 'pinpoints']],
  },
];

const nothing = { luminescence: { 'centres:none': 1 }, absorption: {}, infrared: [[1, ['type-not-determined']]], transmission: [[0.8, 'opaque'], [0.2, 'transparent']], afterGlow: [[1, NO_GLOW]], pattern: [[1, 'none-seen']], strain: [[0.5, 'other'], [0.5, 'none-seen']], magnet: [[1, 'none']], trap: null } as const;
/** Imitations. What is read of their Raman, gravity, index and heat is drawn in sample-stone.ts. */
export const IMITATION_KINDS: readonly EvaluatedKind[] = [
  { ...nothing, id: 'moissanite', truth: 'not-diamond', share: 3, trap: 'conducts heat like diamond', source: 'Nassau, McClure, Elen, Shigley, Gems & Gemology 33 (1997) 260', lamps: [[0.7, INERT], [0.3, ['orange', 'weak', 'orange', 'moderate']]], features: [[0.9, 'facet-doubling'], [0.1, 'nothing-seen']], conducts: 0.7, simulated: 'moissanite' },
  { ...nothing, id: 'cubic zirconia', truth: 'not-diamond', share: 3, source: 'gem tables; judgement', lamps: [[0.6, INERT], [0.4, ['none', 'inert', 'yellow', 'weak']]], features: [[0.1, 'gas-bubbles'], [0.9, 'nothing-seen']], conducts: 0, simulated: 'cubic-zirconia' },
  { ...nothing, id: 'glass', truth: 'not-diamond', share: 1, source: 'gem tables; judgement', lamps: [[0.5, INERT], [0.5, ['green', 'weak', 'green', 'moderate']]], features: [[0.7, 'gas-bubbles'], [0.3, 'nothing-seen']], conducts: 0, simulated: 'glass' },
];
