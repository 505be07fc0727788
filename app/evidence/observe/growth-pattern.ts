import type { FindingFact } from '../../domain/finding.ts';
import type { Observation } from '../../domain/observation.ts';

type Seen = Extract<Observation, { method: 'growth-pattern' }>;
type Meaning = Pick<FindingFact, 'statement' | 'strength' | 'supports' | 'caution' | 'source'>;

/** Natural stones with the look of either kind of grown ones. */
const LOOK_ALIKES = 'Natural diamond with CVD-like fluorescence pattern, Gems & Gemology Lab Notes, Summer 2023';

const MEANINGS: Readonly<Record<Seen['pattern'], Meaning>> = {
  'octahedral-zoning': { statement: 'Deep-ultraviolet image: octahedral zoning.', strength: 'strong', supports: 'natural', caution: 'a grown layer on a natural core can hide behind it: look at several facets', source: `${LOOK_ALIKES}; zoning from memory` },
  'dislocation-network': { statement: 'Deep-ultraviolet image: network of dislocations.', strength: 'strong', supports: 'natural', caution: 'not to be confused with the threading bundles of CVD growth', source: LOOK_ALIKES },
  striations: { statement: 'Deep-ultraviolet image: striations of layered growth.', strength: 'strong', supports: 'grown-cvd', caution: 'natural stones with straight, CVD-like boundaries exist', source: `Eaton-Magaña & Shigley, Gems & Gemology 52 (2016) 222; ${LOOK_ALIKES}` },
  'cuboctahedral-sectors': { statement: 'Deep-ultraviolet image: cuboctahedral sectors.', strength: 'strong', supports: 'grown-hpht', caution: 'natural stones of mixed habit can look alike', source: `Eaton-Magaña, Shigley, Breeding, Gems & Gemology 53 (2017) 262; ${LOOK_ALIKES}` },
  'layer-boundary': { statement: 'Deep-ultraviolet image: straight boundary between a layer and a core.', strength: 'strong', supports: 'grown-cvd', caution: 'a CVD layer on a natural core shows the signs of both; natural stones with a straight boundary exist', source: `Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019; ${LOOK_ALIKES}` },
  'none-seen': { statement: 'Deep-ultraviolet image: no pattern seen.', strength: 'neutral', supports: 'none', caution: 'irradiation and weak luminescence hide patterns', source: 'Heavily irradiated CVD synthetic diamond, Gems & Gemology Lab Notes, Fall 2014' },
  other: { statement: 'Deep-ultraviolet image: a pattern of another kind.', strength: 'neutral', supports: 'none', caution: 'see the note; it carries no weight by rule', source: undefined },
};

/** What the growth pattern says; the strongest thing that can be seen, with look-alikes on every side. */
export const growthPatternFindings = (observation: Seen): FindingFact[] => [{ code: `pattern:${observation.pattern}`, method: 'growth-pattern', ...MEANINGS[observation.pattern] }];
