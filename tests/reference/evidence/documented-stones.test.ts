import { expect, test } from 'vitest';
import type { FindingFact } from '../../../app/domain/finding.ts';
import type { Observation } from '../../../app/domain/observation.ts';
import type { ConclusionId } from '../../../app/domain/conclusion.ts';
import { findingsFromObservation } from '../../../app/evidence/findings-from-observation.ts';
import { centre, DIAMOND, fact, propose, weigh } from '../../unit/app/evidence/finding-fixtures.ts';

const seen = (observation: Observation, ...others: Observation[]): FindingFact[] => findingsFromObservation(observation, { colourClass: 'colourless', mounted: false, others });
const glow = (method: 'fluorescence-long-wave' | 'fluorescence-short-wave', colour: 'none' | 'blue' | 'red' | 'yellow-green', strength: 'inert' | 'weak' | 'strong'): Observation => ({ method, colour, strength });
const TYPE_IIA = fact('infrared:type-IIa', 'none', 'neutral', 'infrared');
const TYPE_IAA = fact('infrared:type-IaA', 'natural', 'strong', 'infrared');
const TYPE_IAAB = fact('infrared:type-IaAB', 'natural', 'strong', 'infrared');
const TYPE_IAB = fact('infrared:type-IaB', 'natural', 'strong', 'infrared');

type Case = { readonly stone: string; readonly source: string; readonly facts: readonly FindingFact[]; readonly never: readonly ConclusionId[]; readonly gives: ConclusionId };
const GROWN = ['grown-cvd', 'grown-hpht', 'grown-undetermined-method'] as const;

// Stones of the literature where one striking reading misled or could have. Each lists what the source says was seen.
const CASES: readonly Case[] = [
  {
    stone: 'natural 2.23 ct, type IaA>B, no strain, taken for HPHT-grown', source: 'McElhenny & Eaton-Magaña, Gems & Gemology Lab Notes, Winter 2018',
    facts: [TYPE_IAAB, ...seen({ method: 'crossed-polarisers', pattern: 'none-seen' })], never: GROWN, gives: 'undetermined',
  },
  {
    stone: 'natural colourless type IaB with silicon-vacancy', source: 'Lo, Gems & Gemology Lab Notes; Silicon in natural type IIa and type IaB diamond, Winter 2013',
    facts: [TYPE_IAB, centre('SIV'), centre('NAT664')], never: GROWN, gives: 'undetermined',
  },
  {
    stone: 'natural type IIa with silicon-vacancy', source: 'Silicon in natural type IIa and type IaB diamond, Gems & Gemology Lab Notes, Winter 2013',
    facts: [TYPE_IIA, centre('SIV'), fact('family:natural-companions', 'natural', 'strong', 'photoluminescence'), ...seen({ method: 'crossed-polarisers', pattern: 'tatami' })], never: GROWN, gives: 'undetermined',
  },
  {
    stone: 'two natural type IIa stones with strong blue after-glow and nickel lines', source: 'Gems & Gemology GNI, Winter 2017',
    facts: [TYPE_IIA, centre('NI883'), centre('GR1'), ...seen({ method: 'phosphorescence', colour: 'blue', strength: 'strong', seconds: 30 })], never: GROWN, gives: 'undetermined',
  },
  {
    stone: 'CVD layer on a natural core: cape spectrum and boron', source: 'Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019',
    facts: [centre('N3', 'absorption'), TYPE_IAAB, fact('infrared:boron', 'none', 'neutral', 'infrared')], never: ['natural', ...GROWN], gives: 'undetermined',
  },
  {
    stone: 'HPHT-treated CVD: inert long-wave, weak yellow-green short-wave, weak strain, no 596/597', source: 'Gems & Gemology Lab Notes, Winter 2008, and Summer 2022',
    facts: [TYPE_IIA, centre('H3'), centre('NV0'), centre('NV-'), centre('SIV'), ...seen(glow('fluorescence-short-wave', 'yellow-green', 'weak'), glow('fluorescence-long-wave', 'none', 'inert')), ...seen({ method: 'crossed-polarisers', pattern: 'mottled' })], never: ['natural'], gives: 'undetermined',
  },
  {
    stone: 'irradiated colourless HPHT-grown melee, red short-wave glow, after-glow gone', source: 'J. Gemmology 38(2) (2022) 128',
    facts: [TYPE_IIA, centre('GR1'), ...seen(glow('fluorescence-short-wave', 'red', 'weak'), glow('fluorescence-long-wave', 'none', 'inert')), ...seen({ method: 'phosphorescence', colour: 'none', strength: 'inert', seconds: 0 }), ...seen({ method: 'growth-pattern', pattern: 'cuboctahedral-sectors' })], never: ['natural'], gives: 'undetermined',
  },
  {
    stone: 'natural stone with a CVD-like growth pattern', source: 'Gems & Gemology Lab Notes, Summer 2023',
    facts: [TYPE_IAAB, centre('N3'), ...seen({ method: 'growth-pattern', pattern: 'striations' })], never: GROWN, gives: 'undetermined',
  },
  {
    stone: 'blue-glowing CVD with a 435 nm band and 499.6 nm', source: 'Anomalous green luminescent properties in CVD synthetic diamonds, phys. status solidi',
    facts: [TYPE_IIA, centre('CVD499'), ...seen(glow('fluorescence-short-wave', 'blue', 'weak'), glow('fluorescence-long-wave', 'blue', 'strong'))], never: ['natural'], gives: 'undetermined',
  },
  {
    stone: 'typical CVD as grown: 596/597, silicon-vacancy, striations, short-wave glow stronger', source: 'Eaton-Magaña & Shigley, Gems & Gemology 52 (2016) 222; Wang et al., Gems & Gemology 48 (2012) 80',
    facts: [TYPE_IIA, centre('SIV'), centre('CVD596'), centre('CVD597'), ...seen({ method: 'growth-pattern', pattern: 'striations' })], never: ['natural'], gives: 'grown-cvd',
  },
  {
    stone: 'typical colourless HPHT-grown: sectors, lasting greenish-blue after-glow, no strain', source: 'Eaton-Magaña, Shigley, Breeding, Gems & Gemology 53 (2017) 262; D’Haenens-Johansson et al., Gems & Gemology 51 (2015)',
    facts: [TYPE_IIA, ...seen({ method: 'growth-pattern', pattern: 'cuboctahedral-sectors' }), ...seen({ method: 'phosphorescence', colour: 'greenish-blue', strength: 'moderate', seconds: 60 }), ...seen({ method: 'crossed-polarisers', pattern: 'none-seen' })], never: ['natural'], gives: 'grown-hpht',
  },
  {
    stone: 'typical natural type Ia: N3, aggregated nitrogen, blue long-wave glow', source: 'arXiv 1702.02959; Boyd, Kiflawi, Woods, Phil. Mag. B 72 (1995) 351; Eaton-Magaña et al., Gems & Gemology 43 (2007)',
    facts: [TYPE_IAAB, centre('N3'), ...seen(glow('fluorescence-short-wave', 'blue', 'weak'), glow('fluorescence-long-wave', 'blue', 'strong'))], never: GROWN, gives: 'natural',
  },
  {
    stone: 'HPHT-grown annealed to the extreme: A aggregates, N3, 3107, opaque at 254 nm', source: 'Collins & Stanley, J. Phys. D 18 (1985) 2537; Day et al., Diamond Relat. Mater. 2024',
    facts: [TYPE_IAA, centre('N3'), fact('infrared:3107', 'natural', 'supporting', 'infrared'), fact('ultraviolet:opaque', 'natural', 'supporting', 'ultraviolet-transmission')], never: ['natural', ...GROWN], gives: 'undetermined',
  },
  {
    stone: 'untreated natural “ABC” diamond with H2', source: 'Hainschwang et al., Diamond Relat. Mater. 2006',
    facts: [TYPE_IAAB, centre('N3'), centre('H2', 'absorption')], never: [...GROWN, 'out-of-scope'], gives: 'natural',
  },
  {
    stone: 'natural stone of mixed habit with an HPHT-like pattern', source: 'Gems & Gemology Lab Notes, Summer 2023',
    facts: [TYPE_IAAB, centre('N3'), ...seen({ method: 'growth-pattern', pattern: 'cuboctahedral-sectors' })], never: GROWN, gives: 'undetermined',
  },
  {
    stone: 'natural near-colourless type IIb with a lasting after-glow', source: 'Gems & Gemology GNI, Spring 2022; Eaton-Magaña et al., Geology 36 (2008) 83',
    facts: [fact('infrared:type-IIb', 'none', 'neutral', 'infrared'), centre('B648'), ...seen({ method: 'phosphorescence', colour: 'greenish-blue', strength: 'moderate', seconds: 30 }), ...seen({ method: 'crossed-polarisers', pattern: 'tatami' })], never: GROWN, gives: 'undetermined',
  },
  {
    stone: 'natural type IIa with orange fluorescence', source: 'Garrod & Gordon, Gems & Jewellery, December 2005, second-hand',
    facts: [TYPE_IIA, centre('NV0'), centre('NV-'), ...seen({ method: 'fluorescence-short-wave', colour: 'orange', strength: 'strong' }, { method: 'fluorescence-long-wave', colour: 'orange', strength: 'moderate' })], never: GROWN, gives: 'undetermined',
  },
  {
    stone: 'layer on a natural core without boron: cape spectrum of the core, silicon in the layer', source: 'Gemmological studies of “hybrid diamond”, Int. Gemmological Conf. 2023',
    facts: [TYPE_IAAB, centre('N3'), centre('N2', 'absorption'), { ...centre('SIV'), strength: 'supporting' }], never: ['natural', ...GROWN], gives: 'undetermined',
  },
  {
    stone: 'irradiated CVD: GR1 over silicon, 490.7 nm, no pattern', source: 'J. Gemmology 37(3) (2020) 86–88; Gems & Gemology Lab Notes, Fall 2014',
    facts: [TYPE_IIA, centre('GR1'), centre('D490'), ...seen({ method: 'growth-pattern', pattern: 'none-seen' }), ...seen({ method: 'crossed-polarisers', pattern: 'mottled' })], never: ['natural'], gives: 'undetermined',
  },
  {
    stone: 'natural IIa treated by heat: NV⁻, H3, graphitised fracture, network and tatami', source: 'Reinitz et al., Gems & Gemology 36 (2000) 128; Chalain, Fritsch, Hänni, J. Gemmology 27 (2000) 73',
    facts: [TYPE_IIA, centre('NV-'), centre('H3'), ...seen({ method: 'growth-pattern', pattern: 'dislocation-network' }), ...seen({ method: 'crossed-polarisers', pattern: 'tatami' }), ...seen({ method: 'microscopy', features: ['graphitised-fracture', 'crystal-inclusion'] })], never: ['natural', ...GROWN], gives: 'out-of-scope',
  },
  {
    stone: 'natural type IIa with silicon-vacancy, companions and olivine', source: 'Wang et al., GSA 2016, abstract 280126; Gems & Gemology Lab Notes, Winter 2013',
    facts: [TYPE_IIA, centre('SIV'), centre('NI883'), ...seen({ method: 'microscopy', features: ['mantle-mineral'] }), ...seen({ method: 'crossed-polarisers', pattern: 'tatami' })], never: GROWN, gives: 'undetermined',
  },
  {
    stone: 'HPHT-grown with visible strain', source: 'McElhenny & Eaton-Magaña, Gems & Gemology Lab Notes, Winter 2018',
    facts: [TYPE_IIA, ...seen({ method: 'growth-pattern', pattern: 'cuboctahedral-sectors' }), ...seen({ method: 'phosphorescence', colour: 'greenish-blue', strength: 'moderate', seconds: 60 }), ...seen({ method: 'crossed-polarisers', pattern: 'banded' })], never: ['natural'], gives: 'grown-hpht',
  },
  {
    stone: 'natural magnetic diamond of type Ia', source: 'Rossman & Kirschvink 1984, as cited by Johnson & Myagkaya, Gems & Gemology Lab Notes, Spring 2017',
    facts: [TYPE_IAAB, centre('N3'), ...seen({ method: 'magnet', response: 'weak' })], never: GROWN, gives: 'natural',
  },
];

test.each(CASES)('$stone ($source)', ({ facts, never, gives }) => {
  const { conclusion } = propose(weigh([DIAMOND, ...facts]));
  expect(never).not.toContain(conclusion);
  expect(conclusion).toBe(gives);
});

test('moissanite that reflects and conducts heat like diamond is no diamond once its Raman lines are seen (J. Gemmology 38(4) (2022) 323)', () => {
  const bench = [...seen({ method: 'thermal-probe', reading: 'diamond-like' }), ...seen({ method: 'refractive-index', by: 'reflectivity', reading: 'value', value: 2.42 })];
  expect(propose(weigh(bench)).conclusion).toBe('undetermined');
  const result = propose(weigh([...bench, fact('simulant:MOISSANITE', 'not-diamond', 'diagnostic', 'raman'), ...seen({ method: 'microscopy', features: ['facet-doubling'] })]));
  expect(result.conclusion).toBe('not-diamond');
  expect(result.against.length).toBe(2);
});
