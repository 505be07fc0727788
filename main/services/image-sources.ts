import type { Failure } from '../../app/contract/failure.ts';
import type { UsedMark } from '../../app/images/analysis-parameters.ts';
import type { Photograph } from '../../app/images/photograph.ts';
import type { PhotographFacts } from '../../app/images/photograph-facts.ts';
import { ok, type Result } from '../../app/result.ts';
import type { RawContent } from '../../db/store/put-raw-record.ts';
import { notFound, refused } from './failures.ts';
import { runImageTask } from './image-work.ts';
import type { Work } from './work-context.ts';

/** A kept photograph with its bytes. */
export type Source = { readonly photographId: string; readonly content: RawContent };
export type ReadSource = Source & { readonly facts: PhotographFacts; readonly photograph: Photograph };

/** The kept bytes of photographs, in the order asked for; each must belong to the item's case. */
export async function sourcesOf({ casebook, stores }: Work, itemId: string, photographIds: readonly string[]): Promise<Result<Source[], Failure>> {
  const piece = await stores.pieces.get(itemId);
  if (piece === null) return notFound('This item');
  const own = new Set(piece.item.photographs.map((photograph) => photograph.id));
  const sources: Source[] = [];
  for (const photographId of photographIds) {
    if (!own.has(photographId)) return refused('That photograph is not one of this item.', 'Add it to the item first, then choose it again.');
    const content = await casebook.photographs.content(photographId);
    if (!content.ok) return content;
    sources.push({ photographId, content: content.value });
  }
  return ok(sources);
}

/** Decodes photographs side by side, one worker for each. */
export async function readSources(work: Work, sources: readonly Source[]): Promise<Result<ReadSource[], Failure>> {
  const read = await Promise.all(sources.map((source) => runImageTask(work, 'decode-photograph', { bytes: source.content.bytes }, source.content.name, (result) => result)));
  const out: ReadSource[] = [];
  for (const [i, one] of read.entries()) {
    if (!one.ok) return one;
    out.push({ ...sources[i]!, ...one.value });
  }
  return ok(out);
}

export type MapSource = { readonly map: { readonly mapId: string; readonly version: number } | null; readonly groundId: string | null; readonly marks: readonly UsedMark[] | null };

/** The marks to measure: those of a map that is placed on a photograph, or none where no map is named. */
export async function marksOfMap({ stores }: Work, itemId: string, mapId: string | null): Promise<Result<MapSource, Failure>> {
  if (mapId === null) return ok({ map: null, groundId: null, marks: null });
  const piece = await stores.pieces.get(itemId);
  const map = piece?.maps.find((one) => one.id === mapId);
  if (map === undefined) return notFound('That map');
  if (map.ground.kind !== 'photograph') return refused(`The map “${map.name}” is a plain grid: its marks have no place on a photograph.`, 'Place the marks on a photograph of the piece, then measure with that map.');
  if (map.marks.length === 0) return refused(`The map “${map.name}” has no marks.`, 'Mark the stones first, or measure without a map: the program then looks for bright places.');
  return ok({ map: { mapId, version: map.version }, groundId: map.ground.photographId, marks: map.marks });
}

/** Of an item with a single stone, the largest place that was found is that stone, and the only one; other marks stay as they are. */
export async function tieOnlyStone({ stores }: Work, itemId: string, marks: readonly UsedMark[]): Promise<UsedMark[]> {
  const stones = (await stores.pieces.get(itemId))?.item.stones ?? [];
  if (stones.length !== 1 || marks.length === 0 || marks.some((mark) => mark.stoneId !== null)) return [...marks];
  const largest = marks.reduce((best, mark) => (mark.radius > best.radius ? mark : best));
  return [{ ...largest, number: 1, stoneId: stones[0]!.id }];
}
