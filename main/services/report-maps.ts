import type { SourceMap } from '../../app/report/content/map-part.ts';
import { AS_TAKEN } from '../../app/piece/picture-view.ts';
import type { CaseRecords } from '../../db/store/case-records.ts';
import { looksOfItem, mapsOfItem } from '../../db/store/pieces-read.ts';
import { runImageTask } from './image-work.ts';
import type { Work } from './work-context.ts';

/** Longer side of a map's picture on paper, in points of the picture: 250 to the inch at the width of a page. */
const PAPER_SIDE = 1700;

/** An upright copy of a photograph for paper; null where it can't be read: the map is then printed without it and says so. */
async function paperCopy(photographId: string, work: Work): Promise<SourceMap['picture']> {
  const content = await work.casebook.photographs.content(photographId);
  if (!content.ok) return null;
  const { bytes, name } = content.value;
  const made = await runImageTask(work, 'photograph-preview', { bytes, longSide: PAPER_SIDE }, name, (result) => result);
  if (!made.ok) return null;
  const { facts, jpeg } = made.value;
  return { base64: Buffer.from(jpeg.buffer, jpeg.byteOffset, jpeg.byteLength).toString('base64'), width: facts.width, height: facts.height };
}

/** The maps of a case's pieces as they stand, in the order of the items. */
export async function reportMaps({ case: { parcels } }: CaseRecords, work: Work): Promise<SourceMap[]> {
  const db = work.casebook.handle.read;
  const maps: SourceMap[] = [];
  for (const item of parcels.flatMap((parcel) => parcel.items)) {
    const looks = looksOfItem(db, item.id);
    for (const map of mapsOfItem(db, item.id)) {
      const { ground } = map;
      const photographId = ground.kind === 'photograph' ? ground.photographId : null;
      maps.push({
        map, view: looks.find((look) => look.photographId === photographId)?.view ?? AS_TAKEN,
        picture: photographId === null || map.marks.length === 0 ? null : await paperCopy(photographId, work),
      });
    }
  }
  return maps;
}
