import type { FindingFact } from '../../domain/finding.ts';
import type { Observation } from '../../domain/observation.ts';
import { colourlessOnly } from './context.ts';
import type { ObservationContext } from './context.ts';
import { glowWords, isInert } from './glow-words.ts';

/** An after-glow that lasts longer is more than what many stones show (Shao et al., Carbon (2020); the limit is judgement). */
const LASTING_SECONDS = 10;
const SOURCE = 'Shao et al., Carbon (2020); Natural IIa with strong phosphorescence: Gems & Gemology GNI, Winter 2017';

/** What the after-glow says. Its absence says nothing: irradiation quenches it. */
export function phosphorescenceFindings(observation: Extract<Observation, { method: 'phosphorescence' }>, context: ObservationContext): FindingFact[] {
  const { colour, seconds } = observation;
  const base = { method: 'phosphorescence', source: SOURCE } as const;
  if (isInert(observation) || seconds === 0) {
    return [{ ...base, code: 'afterglow:none', statement: 'No after-glow.', strength: 'neutral', supports: 'none', caution: 'most natural and CVD-grown stones have none, and irradiation removes it from HPHT-grown ones' }];
  }
  const statement = `After-glow ${glowWords(observation)}, ${seconds} s.`;
  const lasting = seconds > LASTING_SECONDS;
  if (lasting && colour === 'greenish-blue') {
    return [colourlessOnly({ ...base, code: 'afterglow:greenish-blue', statement, strength: 'strong', supports: 'grown-hpht', caution: 'natural boron-bearing and some type IIa stones glow on as well' }, context)];
  }
  if (lasting && colour === 'blue') {
    return [colourlessOnly({ ...base, code: 'afterglow:blue', statement, strength: 'supporting', supports: 'grown-hpht', caution: 'natural type IIa stones with a strong blue after-glow are documented' }, context)];
  }
  return [{ ...base, code: `afterglow:${colour}`, statement, strength: 'neutral', supports: 'none', caution: lasting ? 'red and orange after-glows occur in natural boron-bearing and in HPHT-grown stones' : `short after-glows, up to ${LASTING_SECONDS} s, occur in every kind` }];
}
