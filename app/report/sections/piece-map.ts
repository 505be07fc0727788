import { z } from 'zod';
import { conclusionId } from '../../domain/conclusion.ts';
import { mapGround } from '../../piece/mark.ts';
import { pictureView } from '../../piece/picture-view.ts';
import { mapText } from '../content/map-part.ts';
import { defineSection } from './section.ts';

const parts = z.number();

export const pieceMapPart = z.object({
  section: z.literal('piece-map'),
  maps: z.array(z.object({
    /** "Item B, front" */
    heading: z.string(), ground: mapGround, view: pictureView,
    /** An upright copy of the picture the marks lie on, with its size; null for a grid and where the picture can't be read. */
    picture: z.object({ base64: z.string(), width: parts, height: parts }).nullable(),
    /** What the picture is, and how it was looked at. */
    caption: z.string(),
    /** Places as in app/piece/mark.ts; what stands in the legend. */
    marks: z.array(z.object({ number: z.number(), x: parts, y: parts, radius: parts, stone: z.string(), position: z.string(), conclusion: z.object({ id: conclusionId, words: z.string() }).nullable() })),
    /** Stones of the piece that have no mark on any of its maps, in a sentence; empty where there are none. */
    open: z.array(z.string()),
  })),
});
export type PieceMapPart = z.infer<typeof pieceMapPart>;

export const pieceMapSection = defineSection<PieceMapPart>({
  id: 'piece-map', title: 'Map of the piece', tells: 'where each stone sits, with the sign and the words of its opinion',
  clauses: [], templates: ['piece', 'lot', 'case'], usual: true, part: pieceMapPart,
  build(source) {
    const maps = (source.maps ?? []).filter(({ map }) => map.marks.length > 0).map((one) => mapText(source, one));
    return maps.length === 0 ? null : { section: 'piece-map', maps };
  },
  lines: (part) => part.maps.map((map) => ({
    key: `The map “${map.heading}”`, text: map.marks.map((mark) => `${mark.number} ${mark.stone === '' ? 'no stone' : mark.stone}`).join(', '),
  })),
});
