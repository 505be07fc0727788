import type { ParsedInput } from '../../app/contract/index.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { PhotoAnalysisView } from '../../app/contract/images.ts';
import type { Result } from '../../app/result.ts';
import { refused } from './failures.ts';
import { marksOfMap, sourcesOf, tieOnlyStone } from './image-sources.ts';
import { runImageTask } from './image-work.ts';
import type { ChangingWork } from './work-context.ts';

/** Reads the strain on one photograph and keeps it. Marks of a map are used as they were placed: they must be on this photograph. */
export async function readPolarisers({ itemId, photographId, mapId }: ParsedInput<'images.polarisers'>, work: ChangingWork): Promise<Result<PhotoAnalysisView, Failure>> {
  const placed = await marksOfMap(work, itemId, mapId);
  if (!placed.ok) return placed;
  const { map, marks, groundId } = placed.value;
  if (groundId !== null && groundId !== photographId) return refused('The marks of that map were placed on another photograph.', 'Choose a map on this photograph, or let the program look for the stones.');
  const sources = await sourcesOf(work, itemId, [photographId]);
  if (!sources.ok) return sources;
  const [source] = sources.value;
  const read = await runImageTask(work, 'read-strain', { bytes: source!.content.bytes, marks }, source!.content.name, (result) => result);
  if (!read.ok) return read;
  const tied = await tieOnlyStone(work, itemId, read.value.marks);
  if (tied.length === 0) return refused('No stone was found on that photograph.', 'Mark the stones on the piece’s map, placed on this photograph, then read it again.');
  const used = { photographId, sha256: source!.content.sha256 };
  const stoneOf = new Map(tied.map((mark) => [mark.id, mark.stoneId]));
  const stones = read.value.result.stones.filter((stone) => stoneOf.has(stone.markId)).map((stone) => ({ ...stone, stoneId: stoneOf.get(stone.markId) ?? null }));
  return work.stores.photoAnalyses.keep(work.change, itemId, {
    kind: 'polarisers', parameters: { photograph: used, map, ground: used, marks: tied }, result: { ...read.value.result, stones },
  });
}
