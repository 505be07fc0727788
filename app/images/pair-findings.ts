import type { FindingFact } from '../domain/finding.ts';
import type { MarkLight } from './mark-light.ts';
import type { PairResult, PairStone } from './pair-result.ts';

const SOURCE = 'measured on photographs; robust score after Iglewicz & Hoaglin, ASQC 1993';
const CAUTION = 'standing out is no conclusion: it says which stone to test next, by a method that settles its origin';

/** Colour with its dominant wavelength, or that there is none. */
export function colourText({ colour, state }: MarkLight): string {
  if (state === 'dark' || colour === null) return 'no glow above the stray light';
  return `${colour.word}${colour.dominantNm === null ? '' : ` (dominant ${Math.round(colour.dominantNm)} nm)`}`;
}

/** How many times more (or less) a stone answers to short-wave than the median stone. */
export const timesMedian = (stone: PairStone, { medianLogRatio }: Pick<PairResult, 'medianLogRatio'>): number | null =>
  (stone.logRatio === null || medianLogRatio === null ? null : Math.exp(stone.logRatio - medianLogRatio));

function lampFact(method: 'fluorescence-long-wave' | 'fluorescence-short-wave', lamp: MarkLight): FindingFact {
  const [name, code] = method === 'fluorescence-long-wave' ? ['Long-wave', 'glow-long'] : ['Short-wave', 'glow-short'];
  const amount = lamp.state === 'dark' ? '' : `, ${lamp.state === 'clipped' ? 'more than ' : ''}${(100 * lamp.brightness).toPrecision(2)} % of full scale`;
  return {
    method, code: `${code}:measured`, statement: `${name} ultraviolet, photograph: ${colourText(lamp)}${amount}.`, strength: 'neutral', supports: 'none',
    caution: 'the number depends on lamp, distance and exposure; most diamonds of every origin glow little', source: SOURCE,
  };
}

/** What the comparison says of one stone. Nothing of it carries weight alone. */
export function pairFindings(stone: PairStone, result: PairResult): FindingFact[] {
  const facts = [lampFact('fluorescence-long-wave', stone.longWave), lampFact('fluorescence-short-wave', stone.shortWave)];
  const times = timesMedian(stone, result);
  if (times === null || stone.score === null) return facts;
  const compared = result.stones.filter((other) => other.score !== null && other.bound === 'none').length;
  const bound = stone.bound === 'at-least' ? 'at least ' : stone.bound === 'at-most' ? 'at most ' : '';
  const answer = `${bound}${times.toPrecision(2)} times the median of the piece's ${compared} stones`;
  const [code, words] = !stone.standsOut ? ['like-the-rest', 'does not stand out'] : stone.score > 0 ? ['stands-out-short', 'stands out towards short-wave'] : ['stands-out-long', 'stands out towards long-wave'];
  facts.push({
    method: 'fluorescence-short-wave', code: `glow-pair:${code}`, strength: 'neutral', supports: 'none', source: SOURCE, caution: CAUTION,
    statement: `Short-wave over long-wave, photograph pair: ${answer}, robust score ${stone.score.toFixed(1)}; it ${words}.`.replace("piece's", 'piece’s'),
  });
  return facts;
}
