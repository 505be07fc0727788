import type { PhotographView } from '../../app/contract/cases.ts';
import type { Change } from '../change.ts';
import type { WriteTx } from '../handle.ts';
import { photograph } from '../schema/index.ts';
import { putRawRecord } from './put-raw-record.ts';

export type PhotographInput = {
  readonly name: string; readonly mediaType: string; readonly bytes: Uint8Array; readonly caption: string; readonly light: PhotographView['light'];
};
export type PhotographPlace = { readonly caseId: string; readonly itemId: string | null; readonly stoneId: string | null };

/** Keeps a picture and its bytes inside the caller's transaction; returns its id and the SHA-256 of the bytes. */
export function insertPhotograph(tx: WriteTx, deps: { newId(): string }, change: Change, place: PhotographPlace, input: PhotographInput): { id: string; sha256: string } {
  const raw = putRawRecord(tx, deps, change, { caseId: place.caseId, name: input.name, mediaType: input.mediaType, bytes: input.bytes });
  const id = deps.newId();
  tx.orm.insert(photograph).values({ id, ...place, rawRecordId: raw.id, caption: input.caption, light: input.light, at: change.at }).run();
  return { id, sha256: raw.sha256 };
}
