import type { ParsedInput } from '../../app/contract/index.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { PhotoAnalysisView } from '../../app/contract/images.ts';
import { exposureOf, exposureStops } from '../../app/images/exposure-stops.ts';
import { sayPairRefusal } from '../../app/images/pair-words.ts';
import type { PairResult } from '../../app/images/pair-result.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { taskFailure } from '../workers/task-failure.ts';
import { buffersOf } from '../workers/task.ts';
import { refused } from './failures.ts';
import { marksOfMap, readSources, sourcesOf, type ReadSource } from './image-sources.ts';
import type { ChangingWork } from './work-context.ts';

/** The difference of exposure, and where it comes from. A pair of which only one file speaks must be told. */
function stopsOf(long: ReadSource, short: ReadSource, stated: number | null): Result<{ stops: number; stopsFrom: PairResult['stopsFrom'] }, Failure> {
  if (stated !== null) return ok({ stops: stated, stopsFrom: 'stated' });
  const [first, second] = [exposureOf(long.facts.exif), exposureOf(short.facts.exif)];
  const stops = exposureStops(first, second);
  if (stops !== null) return ok({ stops, stopsFrom: 'exif' });
  if (first.seconds === null && second.seconds === null) return ok({ stops: 0, stopsFrom: 'assumed-equal' });
  const message = 'Only one of the two files says how it was exposed, so the difference is not known.';
  return err({ code: 'invalid-input', message, next: 'Write by how many stops the short-wave photograph was exposed more (0 if both alike), then compare again.', fields: { stops: message } });
}

/** Reads both photographs side by side, compares them in a worker and keeps what was found. */
export async function comparePairOf(input: ParsedInput<'images.comparePair'>, work: ChangingWork): Promise<Result<PhotoAnalysisView, Failure>> {
  if (input.longWaveId === input.shortWaveId) return refused('Both are the same photograph.', 'Choose one taken under long-wave and one taken under short-wave light.');
  const placed = await marksOfMap(work, input.itemId, input.mapId);
  if (!placed.ok) return placed;
  const { map, marks } = placed.value;
  const groundId = placed.value.groundId ?? input.longWaveId;
  const needed = [...new Set([input.longWaveId, input.shortWaveId, groundId])];
  const sources = await sourcesOf(work, input.itemId, needed);
  if (!sources.ok) return sources;
  const read = await readSources(work, sources.value);
  if (!read.ok) return read;
  const of = (id: string): ReadSource => read.value.find((source) => source.photographId === id)!;
  const [long, short, ground] = [of(input.longWaveId), of(input.shortWaveId), of(groundId)];
  const exposure = stopsOf(long, short, input.stops);
  if (!exposure.ok) return exposure;

  const outcome = await work.pool.run('compare-pair', {
    longWave: long.photograph, shortWave: short.photograph, marks, ground: ground === long ? null : ground.photograph, ...exposure.value,
  }, { signal: work.call.signal, transfers: buffersOf(read.value.map(({ photograph }) => photograph.data)) });
  if (!outcome.ok) return taskFailure(outcome.error);
  if (!outcome.value.ok) return err({ code: 'refused', ...sayPairRefusal(outcome.value.error) });
  const used = ({ photographId, content }: ReadSource) => ({ photographId, sha256: content.sha256 });
  return work.stores.photoAnalyses.keep(work.change, input.itemId, {
    kind: 'pair', result: outcome.value.value.result,
    // Marks found by the program have no other place to stand; those of a map are kept as they were placed.
    parameters: { longWave: used(long), shortWave: used(short), map, ground: used(ground), marks: [...(marks ?? outcome.value.value.marks)], statedStops: input.stops },
  });
}
