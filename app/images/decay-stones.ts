import type { PairMark } from './compare-pair.ts';
import { fitDecay, LEAST_POINTS } from './decay-fit.ts';
import { DECAY_VERSION, type DecayResult, type DecayStone } from './decay-result.ts';
import type { MarkLight } from './mark-light.ts';

/** One frame after the lamp went off. */
export type MeasuredFrame = {
  readonly seconds: number;
  /** By how many stops it was exposed more than the first. */
  readonly stops: number;
  readonly lights: readonly (MarkLight | null)[];
};

function stoneOf(mark: PairMark, index: number, frames: readonly MeasuredFrame[]): DecayStone {
  const seen = frames.flatMap(({ seconds, stops, lights }) => {
    const light = lights[index];
    return light ? [{ seconds, light, brightness: light.brightness / 2 ** stops }] : [];
  });
  const points = seen.map(({ seconds, brightness, light: { state } }) => ({ seconds, brightness, state }));
  const lit = seen.filter(({ light }) => light.state !== 'dark');
  return {
    markId: mark.id, number: mark.number, stoneId: mark.stoneId, points, fit: fitDecay(points.filter((point) => point.state === 'measured')),
    seenUntil: lit.at(-1)?.seconds ?? null, colour: seen.find(({ light }) => light.state === 'measured')?.light.colour ?? null,
  };
}

const listed = (stones: readonly DecayStone[]): string => stones.map((stone) => stone.number).join(', ');

function notesOf(stones: readonly DecayStone[], exposures: DecayResult['exposures']): string[] {
  const clipped = stones.filter((stone) => stone.points.some((point) => point.state === 'clipped'));
  const short = stones.filter((stone) => stone.seenUntil !== null && stone.fit === null);
  return [
    ...(clipped.length > 0 ? [`Overexposed at first: ${listed(clipped)}. Those frames are left out of the fit.`] : []),
    ...(short.length > 0 ? [`Glow in too few frames for a lifetime (${LEAST_POINTS} are needed), or without fading: ${listed(short)}.`] : []),
    ...(exposures === 'assumed-equal' ? ['The files do not all say their exposure: all were taken as exposed alike.'] : []),
    'The frames were taken as they lie: camera and piece must not have moved.',
  ];
}

/** The fading of every stone over the frames, ascending in time. */
export function decayOfStones(marks: readonly PairMark[], frames: readonly MeasuredFrame[], exposures: DecayResult['exposures']): DecayResult {
  const stones = marks.map((mark, i) => stoneOf(mark, i, frames));
  return { version: DECAY_VERSION, exposures, stones, notes: notesOf(stones, exposures) };
}
