import type { ParsedInput } from '../../app/contract/index.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { PhotoAnalysisView } from '../../app/contract/images.ts';
import { decayOfStones } from '../../app/images/decay-stones.ts';
import { exposureOf, exposureStops } from '../../app/images/exposure-stops.ts';
import { ok, type Result } from '../../app/result.ts';
import { refused } from './failures.ts';
import { marksOfMap, sourcesOf, tieOnlyStone, type Source } from './image-sources.ts';
import { runImageTask } from './image-work.ts';
import type { TaskResult } from '../workers/registry.ts';
import type { ChangingWork } from './work-context.ts';

type Frame = Source & { readonly seconds: number };
type Measured = Extract<TaskResult<'measure-frame'>, { ok: true }>['value'];

/** The frames in the order of time, with their bytes. */
async function framesOf({ itemId, frames }: ParsedInput<'images.decay'>, work: ChangingWork): Promise<Result<Frame[], Failure>> {
  const ordered = [...frames].sort((a, b) => a.seconds - b.seconds);
  if (new Set(ordered.map((frame) => frame.photographId)).size < ordered.length) return refused('A photograph is in the series twice.', 'Take it out once; each stands for one time.');
  if (new Set(ordered.map((frame) => frame.seconds)).size < ordered.length) return refused('Two photographs have the same time.', 'Write for each how many seconds after the lamp it was taken.');
  const sources = await sourcesOf(work, itemId, ordered.map((frame) => frame.photographId));
  return sources.ok ? ok(sources.value.map((source, i) => ({ ...source, seconds: ordered[i]!.seconds }))) : sources;
}

/** Measures the frames one after the other, so that no more than one lies in memory for each worker, and keeps the fading of each stone. */
export async function measureDecay(input: ParsedInput<'images.decay'>, work: ChangingWork): Promise<Result<PhotoAnalysisView, Failure>> {
  const placed = await marksOfMap(work, input.itemId, input.mapId);
  if (!placed.ok) return placed;
  const frames = await framesOf(input, work);
  if (!frames.ok) return frames;
  const measure = (frame: Frame, marks: Parameters<typeof work.pool.run<'measure-frame'>>[1]['marks']) => runImageTask(work, 'measure-frame', { bytes: frame.content.bytes, marks }, frame.content.name, (result) => result);
  const first = await measure(frames.value[0]!, placed.value.marks);
  if (!first.ok) return first;
  const marks = await tieOnlyStone(work, input.itemId, first.value.marks);
  if (marks.length === 0) return refused('No stone glows in the first photograph, and none is marked.', 'Mark the stones on the piece’s map first, or record by hand that there is no after-glow.');
  const rest = await Promise.all(frames.value.slice(1).map((frame) => measure(frame, marks)));
  const measured: Measured[] = [marks.length === first.value.marks.length ? first.value : { ...first.value, lights: first.value.lights.filter((_, i) => marks.some((mark) => mark.id === first.value.marks[i]!.id)) }];
  for (const one of rest) {
    if (!one.ok) return one;
    measured.push(one.value);
  }
  if (measured.some(({ width, height }) => width !== measured[0]!.width || height !== measured[0]!.height)) {
    return refused('The photographs of the series are not all of the same size.', 'Take all with the same camera and settings, and keep them uncropped.');
  }
  const stops = measured.map(({ exif }) => exposureStops(exposureOf(measured[0]!.exif), exposureOf(exif)));
  const known = stops.every((value) => value !== null);
  const used = ({ photographId, content }: Source) => ({ photographId, sha256: content.sha256 });
  const ground = placed.value.groundId === null ? frames.value[0]! : frames.value.find((frame) => frame.photographId === placed.value.groundId);
  const groundSource = ground === undefined ? await sourcesOf(work, input.itemId, [placed.value.groundId!]) : ok([ground as Source]);
  if (!groundSource.ok) return groundSource;
  return work.stores.photoAnalyses.keep(work.change, input.itemId, {
    kind: 'decay',
    parameters: { frames: frames.value.map((frame) => ({ ...used(frame), seconds: frame.seconds })), map: placed.value.map, ground: used(groundSource.value[0]!), marks },
    result: decayOfStones(marks, measured.map(({ lights }, i) => ({ seconds: frames.value[i]!.seconds, stops: known ? stops[i]! : 0, lights })), known ? 'exif' : 'assumed-equal'),
  });
}
