import type { FindingFact } from '../../domain/finding.ts';
import type { Observation } from '../../domain/observation.ts';

type Seen = Extract<Observation, { method: 'crossed-polarisers' }>;
type Meaning = Pick<FindingFact, 'statement' | 'strength' | 'supports' | 'caution' | 'source'>;

/** Strain is a texture, never an origin by itself: nothing here is more than supporting. */
const MEANINGS: Readonly<Record<Seen['pattern'], Meaning>> = {
  banded: { statement: 'Crossed polarisers: banded strain.', strength: 'supporting', supports: 'natural', caution: 'not specific alone', source: 'Howell, Eur. J. Mineral. 24 (2012) 575' },
  mottled: { statement: 'Crossed polarisers: mottled strain.', strength: 'supporting', supports: 'natural', caution: 'heated CVD-grown stones can show a weak grey mottle', source: 'Howell, Eur. J. Mineral. 24 (2012) 575' },
  tatami: { statement: 'Crossed polarisers: cross-hatched (tatami) strain.', strength: 'supporting', supports: 'natural', caution: 'usual in natural type IIa, treated or not', source: 'from memory of the gemmological literature' },
  columnar: { statement: 'Crossed polarisers: columnar strain.', strength: 'supporting', supports: 'grown-cvd', caution: 'heated CVD-grown stones show only weak grey strain', source: 'HPHT-treated CVD synthetic diamond, Gems & Gemology Lab Notes, Winter 2008; Materials 14 (2021) 6225' },
  'none-seen': { statement: 'Crossed polarisers: no strain seen.', strength: 'supporting', supports: 'grown-hpht', caution: 'a natural stone without strain has been taken for HPHT-grown', source: 'McElhenny & Eaton-Magaña, Gems & Gemology Lab Notes, Winter 2018' },
  other: { statement: 'Crossed polarisers: strain of another kind.', strength: 'neutral', supports: 'none', caution: 'see the note; it carries no weight by rule', source: undefined },
};

export const crossedPolarisersFindings = (observation: Seen): FindingFact[] => [{ code: `strain:${observation.pattern}`, method: 'crossed-polarisers', ...MEANINGS[observation.pattern] }];
