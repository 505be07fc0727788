import { z } from 'zod';
import type { MapView } from '../../app/contract/pieces.ts';
import { mapGround, mark } from '../../app/piece/mark.ts';

/** A map as it stands on the sheet, saved or not. */
export type MapSheet = { readonly name: string; readonly ground: MapView['ground']; readonly marks: MapView['marks'] };

const draft = z.object({ onVersion: z.number(), name: z.string(), ground: mapGround, marks: z.array(mark) });
export type MapDraft = z.infer<typeof draft>;

export const mapDraftKey = (mapId: string): string => `map:${mapId}`;

/** A kept draft, or null where there is none or it was written by another version of the program. */
export function readMapDraft(content: unknown): MapDraft | null {
  const parsed = draft.safeParse(content);
  return parsed.success ? parsed.data : null;
}

export const sameSheet = (a: MapSheet, b: MapSheet): boolean =>
  a === b || (a.name === b.name && JSON.stringify(a.ground) === JSON.stringify(b.ground) && JSON.stringify(a.marks) === JSON.stringify(b.marks));
