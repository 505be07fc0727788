import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { UPLOAD_PIECE_BYTES } from '../../../../app/contract/uploads.ts';
import type { Session } from '../../../../main/services/service.ts';
import { createUploads, type Disk, type Uploads } from '../../../../main/uploads/uploads.ts';

let made = 0;

/** Files on their way, in a folder of their own. */
export function madeUploads(disk?: Disk): { readonly uploads: Uploads; readonly folder: string } {
  const folder = mkdtempSync(path.join(tmpdir(), 'culet-incoming-'));
  return { folder, uploads: createUploads({ folder: () => folder, newId: () => `upload-${++made}`, ...(disk === undefined ? {} : { disk }) }) };
}

/** Carries bytes as the window does; gives the name under which they lie there. */
export async function laid(uploads: Uploads, session: Session, name: string, bytes: Uint8Array): Promise<string> {
  const begun = await uploads.begin(session, name, bytes.byteLength);
  if (!begun.ok) throw new Error(begun.error.message);
  for (let at = 0; at < bytes.byteLength; at += UPLOAD_PIECE_BYTES) {
    const sent = await uploads.piece(session, begun.value, at, bytes.subarray(at, at + UPLOAD_PIECE_BYTES));
    if (!sent.ok) throw new Error(sent.error.message);
  }
  return begun.value;
}
