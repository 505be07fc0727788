import { INERT, NO_GLOW } from './evaluated-kind.ts';
import type { EvaluatedKind } from './evaluated-kind.ts';

const SHARES = 'Eaton-Magaña et al., Gems & Gemology 43 (2007); Green et al. 2017, arXiv 1702.02959; Mintrone, Phan, Chalain, IGC 2023; the rest is judgement';
const TYPE_IA: EvaluatedKind = {
  id: 'natural Ia', truth: 'natural', share: 34, trap: null, source: SHARES, simulated: 'natural-ia',
  luminescence: { 'centre:N3': 0.95, 'family:nickel-nitrogen': 0.4, 'centre:H3': 0.4, 'centre:H4': 0.2, 'centre:NV0': 0.2, 'centre:NV-': 0.2, 'centre:SIV': 0.001, 'centre:NI883': 0.002 },
  absorption: { 'centre:N3': 0.6, 'centre:N2': 0.35, 'centre:H2': 0.004 },
  infrared: [[0.55, ['type-IaAB', 'platelet', '3107']], [0.2, ['type-IaAB', '3107']], [0.1, ['type-IaB', 'platelet', '3107']], [0.13, ['type-IaA', '3107']], [0.02, ['type-not-determined']]],
  transmission: [[0.96, 'opaque'], [0.035, 'partly'], [0.005, 'transparent']],
  lamps: [[0.65, INERT], [0.1, ['blue', 'weak', 'none', 'inert']], [0.14, ['blue', 'moderate', 'blue', 'weak']], [0.1, ['blue', 'strong', 'blue', 'weak']], [0.01, ['yellow', 'weak', 'yellow', 'weak']]],
  afterGlow: [[0.97, NO_GLOW], [0.03, ['blue', 3]]],
  pattern: [[0.87, 'octahedral-zoning'], [0.05, 'dislocation-network'], [0.065, 'none-seen'], [0.005, 'striations'], [0.01, 'other']],
  strain: [[0.55, 'banded'], [0.35, 'mottled'], [0.06, 'other'], [0.04, 'none-seen']],
  magnet: [[0.9995, 'none'], [0.0005, 'weak']],
  features: [[0.25, 'crystal-inclusion'], [0.03, 'mantle-mineral'], [0.3, 'feather'], [0.2, 'pinpoints'], [0.215, 'nothing-seen'], [0.005, 'metallic-flux']],
  conducts: 0,
};
const TYPE_IIA: EvaluatedKind = {
  id: 'natural IIa', truth: 'natural', share: 5, trap: null, source: 'Gems & Gemology GNI, Winter 2017 (GR1, inert); Fisher & Spits 2000 (from memory); the rest is judgement', simulated: 'natural-iia',
  luminescence: { 'centre:NV0': 0.8, 'centre:NV-': 0.7, 'centre:GR1': 0.6, 'centre:DEF579': 0.5, 'centre:DEF569': 0.4, 'centre:H3': 0.5, 'centre:SIV': 0.01 },
  absorption: {},
  infrared: [[0.97, ['type-IIa']], [0.03, ['type-not-determined']]],
  transmission: [[0.93, 'transparent'], [0.07, 'partly']],
  lamps: [[0.6, INERT], [0.3, ['blue', 'weak', 'blue', 'weak']], [0.05, ['blue', 'moderate', 'blue', 'weak']], [0.05, ['none', 'inert', 'blue', 'weak']]],
  afterGlow: [[0.93, NO_GLOW], [0.05, ['blue', 5]], [0.02, ['blue', 20]]],
  pattern: [[0.85, 'dislocation-network'], [0.13, 'none-seen'], [0.01, 'striations'], [0.01, 'other']],
  strain: [[0.85, 'tatami'], [0.1, 'mottled'], [0.05, 'other']],
  magnet: [[1, 'none']],
  features: [[0.1, 'crystal-inclusion'], [0.3, 'feather'], [0.6, 'nothing-seen']],
  conducts: 0,
};

/** Natural stones, plain ones first, then documented exceptions. Chances: literature named in `source`, the rest judgement. */
export const NATURAL_KINDS: readonly EvaluatedKind[] = [
  TYPE_IA,
  TYPE_IIA,
  {
    ...TYPE_IIA, id: 'natural IIb, near-colourless', share: 1, trap: 'natural boron', source: 'Gems & Gemology GNI, Spring 2022; Eaton-Magaña et al., Geology 36 (2008) 83', simulated: 'natural-iib',
    luminescence: { 'centre:B648': 0.6, 'centre:GR1': 0.5 }, infrared: [[0.9, ['type-IIb']], [0.1, ['type-IIa']]],
    lamps: [[0.6, INERT], [0.4, ['none', 'inert', 'blue', 'weak']]], afterGlow: [[0.5, ['greenish-blue', 20]], [0.25, ['red', 30]], [0.25, NO_GLOW]], conducts: 0.8,
  },
  { ...TYPE_IA, id: 'natural Ia without strain', share: 1, trap: 'no strain, dark inclusions', source: 'McElhenny & Eaton-Magaña, Gems & Gemology Lab Notes, Winter 2018', strain: [[1, 'none-seen']], features: [[0.3, 'metallic-flux'], [0.7, 'pinpoints']] },
  {
    ...TYPE_IA, id: 'natural IaAB or IaB with silicon', share: 1, trap: 'silicon-vacancy in natural diamond', source: 'Silicon in natural type IIa and type IaB diamond, Gems & Gemology Lab Notes, Winter 2013; Lo, Gems & Gemology Lab Notes',
    luminescence: { 'centre:SIV': 1, 'centre:NAT664': 0.7, 'centre:N3': 0.6, 'centre:H3': 0.7, 'family:natural-companions': 0.2 }, infrared: [[0.5, ['type-IaB', 'platelet']], [0.5, ['type-IaAB']]],
  },
  {
    ...TYPE_IIA, id: 'natural IIa with silicon and olivine', share: 1, trap: 'silicon-vacancy and nickel in natural diamond', source: 'Wang et al., GSA 2016, abstract 280126; Gems & Gemology Lab Notes, Winter 2013', simulated: 'natural-iia-silicon',
    luminescence: { 'centre:SIV': 1, 'family:natural-companions': 0.7, 'centre:NI883': 0.3, 'centre:GR1': 0.4 }, features: [[0.4, 'mantle-mineral'], [0.3, 'crystal-inclusion'], [0.3, 'nothing-seen']],
  },
  {
    ...TYPE_IIA, id: 'natural IIa with blue after-glow and nickel', share: 1, trap: 'after-glow and nickel in natural diamond', source: 'Gems & Gemology GNI, Winter 2017',
    luminescence: { 'centre:NI883': 1, 'centre:GR1': 0.8, 'centre:NV0': 0.5 }, lamps: [[0.5, ['none', 'inert', 'blue', 'moderate']], [0.5, ['blue', 'weak', 'blue', 'moderate']]], afterGlow: [[0.9, ['blue', 40]], [0.1, ['blue', 8]]],
  },
  { ...TYPE_IIA, id: 'natural IIa with orange glow', share: 0.7, trap: 'orange fluorescence', source: 'Garrod & Gordon, Gems & Jewellery Dec. 2005, second-hand', lamps: [[0.7, ['orange', 'weak', 'orange', 'moderate']], [0.3, ['orange', 'strong', 'orange', 'weak']]], luminescence: { 'centre:NV0': 1, 'centre:NV-': 0.9, 'centre:GR1': 0.4, 'centre:DEF579': 0.4 } },
  { ...TYPE_IA, id: 'natural with a CVD-like boundary', share: 0.8, trap: 'straight boundary in natural diamond', source: 'Gems & Gemology Lab Notes, Summer 2023', pattern: [[0.7, 'striations'], [0.3, 'layer-boundary']] },
  { ...TYPE_IA, id: 'natural of mixed habit', share: 0.8, trap: 'HPHT-like sectors in natural diamond', source: 'Gems & Gemology Lab Notes, Summer 2023', pattern: [[1, 'cuboctahedral-sectors']] },
  {
    ...TYPE_IA, id: 'natural with A, B and C nitrogen and H2', share: 1, trap: 'H2 without treatment', source: 'Hainschwang et al., Diamond Relat. Mater. 2006',
    luminescence: { ...TYPE_IA.luminescence, 'centre:H2': 0.5 }, absorption: { 'centre:N3': 0.6, 'centre:H2': 1 },
  },
  { ...TYPE_IA, id: 'natural, magnetic', share: 0.3, trap: 'magnetic natural diamond', source: 'Rossman & Kirschvink 1984, as cited by Johnson & Myagkaya 2017', magnet: [[0.6, 'weak'], [0.4, 'clear']] },
  {
    ...TYPE_IA, id: 'natural Ia, irradiated', truth: 'natural-treated', share: 1.2, trap: 'irradiated', source: 'Collins, Davies, Woods 1986; J. Spectroscopy 2018, 8153941', simulated: 'natural-irradiated',
    luminescence: { 'centre:N3': 0.8, 'centre:GR1': 0.9, 'centre:3H': 0.4, 'centre:595': 0.4, 'centre:H3': 0.6 }, absorption: { 'centre:N3': 0.5, 'centre:GR1': 0.7, 'centre:595': 0.6 }, pattern: [[0.5, 'octahedral-zoning'], [0.5, 'none-seen']],
  },
  {
    ...TYPE_IIA, id: 'natural IIa, HPHT-treated', truth: 'natural-treated', share: 1.5, trap: 'heated natural', source: 'Reinitz et al., Gems & Gemology 36 (2000) 128; Chalain, Fritsch, Hänni, J. Gemmology 27 (2000) 73', simulated: 'natural-hpht-treated',
    luminescence: { 'centre:NV0': 0.8, 'centre:NV-': 1, 'centre:H3': 0.7, 'centre:H2': 0.4 }, absorption: { 'centre:H2': 0.4, 'centre:H3': 0.4 }, features: [[0.4, 'graphitised-fracture'], [0.6, 'nothing-seen']],
  },
];
