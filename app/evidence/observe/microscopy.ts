import type { FindingFact } from '../../domain/finding.ts';
import type { Observation } from '../../domain/observation.ts';

type Seen = Extract<Observation, { method: 'microscopy' }>;
type Feature = Seen['features'][number];
type Meaning = Pick<FindingFact, 'statement' | 'strength' | 'supports' | 'caution' | 'source'>;

const FLUX = 'McElhenny & Eaton-Magaña, Gems & Gemology Lab Notes, Winter 2018';
const TREATED = 'Reinitz, Buerki, Shigley, McClure, Moses, Gems & Gemology 36 (2000) 128';
const HANDBOOK = 'common practice, no source';
const nothing = (statement: string, caution: string): Meaning => ({ statement, strength: 'neutral', supports: 'none', caution, source: HANDBOOK });

const MEANINGS: Readonly<Record<Feature, Meaning>> = {
  'metallic-flux': { statement: 'Microscope: metallic inclusions, like flux metal.', strength: 'strong', supports: 'grown-hpht', caution: 'dark natural inclusions have been taken for metal', source: FLUX },
  'crystal-inclusion': { statement: 'Microscope: crystal inclusion, not identified.', strength: 'supporting', supports: 'natural', caution: 'decides only when its Raman spectrum names a mantle mineral', source: 'Wang et al., GSA 2016, abstract 280126' },
  'mantle-mineral': { statement: 'Microscope: inclusion that its Raman spectrum names as a mantle mineral.', strength: 'strong', supports: 'natural', caution: 'the core is natural; a CVD layer may still sit on it', source: 'Wang et al., GSA 2016, abstract 280126; Silicon in natural type IIa and type IaB diamond, Gems & Gemology Lab Notes, Winter 2013' },
  pinpoints: nothing('Microscope: pinpoints.', 'occur in natural and in laboratory-grown stones'),
  feather: nothing('Microscope: feather.', 'occurs in every kind of diamond'),
  'graphitised-fracture': { statement: 'Microscope: graphitised fracture.', strength: 'supporting', supports: 'treatment', caution: 'points to heating, of natural or grown stones', source: TREATED },
  'green-graining': { statement: 'Microscope: green luminescing graining.', strength: 'supporting', supports: 'treatment', caution: 'known in HPHT-treated natural type Ia stones, and in untreated ones with H3', source: TREATED },
  graining: nothing('Microscope: graining.', 'not specific'),
  inscription: nothing('Microscope: inscription on the stone.', 'an inscription is a claim: compare it with its document'),
  'facet-doubling': { statement: 'Microscope: facet edges seen double.', strength: 'strong', supports: 'not-diamond', caution: 'look along several directions', source: 'Nassau, McClure, Elen, Shigley, Gems & Gemology 33 (1997) 260' },
  'gas-bubbles': { statement: 'Microscope: gas bubbles.', strength: 'strong', supports: 'not-diamond', caution: 'a filled fracture can hold bubbles too', source: HANDBOOK },
  'nothing-seen': nothing('Microscope: no inclusions seen.', 'clean stones occur in every kind'),
};

/** One fact per feature, in the order of the list, each once. */
export function microscopyFindings(observation: Seen): FindingFact[] {
  const seen = new Set(observation.features);
  return (Object.keys(MEANINGS) as Feature[]).filter((feature) => seen.has(feature)).map((feature) => ({ code: `seen:${feature}`, method: 'microscopy', ...MEANINGS[feature] }));
}
