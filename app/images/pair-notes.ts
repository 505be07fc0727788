import { LEAST_VALUES } from './robust-scores.ts';
import type { PairResult } from './pair-result.ts';

const numbers = (list: readonly number[]): string => list.map((n) => `${n}`).join(', ');

/** What a reader of a comparison must know beside its numbers, as sentences. */
export function pairNotes({ stones, outside, stopsFrom, medianLogRatio }: Omit<PairResult, 'notes'>): string[] {
  const notes: string[] = [];
  const clipped = stones.filter((stone) => stone.longWave.state === 'clipped' || stone.shortWave.state === 'clipped').map((stone) => stone.number);
  const dark = stones.filter((stone) => stone.longWave.state === 'dark' && stone.shortWave.state === 'dark').map((stone) => stone.number);
  if (clipped.length > 0) notes.push(`Overexposed: ${numbers(clipped)}. Their ratio is only a bound; a shorter exposure gives a number.`);
  if (dark.length > 0) notes.push(`No glow to measure under either lamp: ${numbers(dark)}. A longer exposure may show one.`);
  if (outside.length > 0) notes.push(`Cut off at the edge of a photograph, not measured: ${numbers(outside)}.`);
  if (stopsFrom === 'assumed-equal') notes.push('Neither file says its exposure: both were taken as exposed alike. Enter the difference if they were not.');
  if (medianLogRatio === null) notes.push(`Fewer than ${LEAST_VALUES} stones have a ratio: there is no rest of the piece for a stone to stand out from.`);
  return notes;
}
