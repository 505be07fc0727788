import type { FindingFact } from '../../domain/finding.ts';
import type { Observation } from '../../domain/observation.ts';
import { colourlessOnly, latest } from './context.ts';
import type { ObservationContext } from './context.ts';
import { glowRank, glowWords, isInert } from './glow-words.ts';
import type { Glow } from './glow-words.ts';

type Fluorescence = Extract<Observation, { method: 'fluorescence-long-wave' | 'fluorescence-short-wave' }>;
type Method = Fluorescence['method'];

const LAMP: Readonly<Record<Method, string>> = { 'fluorescence-long-wave': 'Long-wave', 'fluorescence-short-wave': 'Short-wave' };
/** About a third of near-colourless natural diamonds fluoresce, nearly all of them blue: Moses et al. 1997 as quoted by the paper. */
const SHARE_SOURCE = 'Eaton-Magaña et al., Gems & Gemology 43 (2007)';
const COMPARISON_SOURCE = 'HPHT-treated CVD synthetic diamond, Gems & Gemology Lab Notes, Winter 2008; Eaton-Magaña et al., Gems & Gemology 43 (2007)';
/** From this strength on a blue long-wave glow is read as nitrogen’s (judgement). */
const CLEAR_BLUE_RANK = 3; // moderate

/** What one lamp showed. It carries no weight alone: every glow and none occur in every kind of diamond. */
function glowSeen(observation: Fluorescence): FindingFact {
  const { method } = observation;
  const seconds = observation.exposureSeconds === undefined ? '' : `, ${observation.exposureSeconds} s exposure`;
  const base = { method, strength: 'neutral', supports: 'none', source: SHARE_SOURCE } as const;
  const name = method === 'fluorescence-long-wave' ? 'glow-long' : 'glow-short';
  if (isInert(observation)) {
    return { ...base, code: `${name}:inert`, statement: `${LAMP[method]} ultraviolet: inert${seconds}.`, caution: 'most diamonds of every origin do not glow; absence does not decide' };
  }
  const orange = observation.colour === 'orange' || observation.colour === 'red' || observation.colour === 'pink';
  return {
    ...base, code: `${name}:${observation.colour}`, statement: `${LAMP[method]} ultraviolet: ${glowWords(observation)}${seconds}.`,
    caution: orange ? 'usual in CVD-grown stones, known in natural type IIa; the comparison of both lamps says more' : 'the comparison of both lamps says more than one',
  };
}

/** Which lamp excites more. Both recorded on one scale, long-wave first. */
function compareLamps(method: Method, long: Glow, short: Glow, context: ObservationContext): FindingFact {
  const base = { method, source: COMPARISON_SOURCE } as const;
  const [longRank, shortRank] = [isInert(long) ? 0 : glowRank(long), isInert(short) ? 0 : glowRank(short)];
  const both = `short-wave ${glowWords(short)}, long-wave ${glowWords(long)}`;
  if (longRank === 0 && shortRank === 0) {
    return { ...base, code: 'glow-both:inert', statement: 'Inert under both lamps.', strength: 'neutral', supports: 'none', caution: 'most diamonds of every origin do not glow; absence does not decide' };
  }
  if (shortRank > longRank) {
    return colourlessOnly({
      ...base, code: 'glow:short-over-long', statement: `Short-wave glow stronger than long-wave, ${short.colour} (${both}).`, strength: 'supporting', supports: 'grown',
      caution: 'natural type II stones can do the same; other imitations too',
    }, context);
  }
  if (longRank > shortRank && long.colour === 'blue' && longRank >= CLEAR_BLUE_RANK) {
    return colourlessOnly({
      ...base, code: 'glow:long-over-short', statement: `Long-wave glow stronger than short-wave, blue (${both}).`, strength: 'supporting', supports: 'natural',
      caution: 'a natural core under a grown layer glows the same; some CVD stones have a blue band of their own',
    }, context);
  }
  const relation = longRank === shortRank ? 'equal under both lamps' : 'stronger under long-wave';
  return { ...base, code: longRank === shortRank ? 'glow:equal' : 'glow:long-over-short-other', statement: `Glow ${relation} (${both}).`, strength: 'neutral', supports: 'none', caution: 'occurs in natural and in laboratory-grown stones' };
}

/** The glow under one lamp and, once both lamps were used, their comparison. */
export function fluorescenceFindings(observation: Fluorescence, context: ObservationContext): FindingFact[] {
  const seen = glowSeen(observation);
  const { method } = observation;
  const long = method === 'fluorescence-long-wave' ? observation : latest('fluorescence-long-wave', context);
  const short = method === 'fluorescence-short-wave' ? observation : latest('fluorescence-short-wave', context);
  return long === undefined || short === undefined ? [seen] : [seen, compareLamps(method, long, short, context)];
}
