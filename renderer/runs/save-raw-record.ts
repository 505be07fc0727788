import type { Failure } from '../../app/contract/failure.ts';
import { door } from '../door.ts';
import { saveFile } from '../look/save-file.ts';

/** Hands the instrument's own file back, byte for byte. Gives what went wrong, or null. */
export async function saveRawRecord(rawRecordId: string): Promise<Failure | null> {
  const reply = await door.call('raw.content', { rawRecordId });
  if (!reply.ok) return reply.error;
  saveFile(reply.value.name, reply.value.mediaType, reply.value.bytes);
  return null;
}
