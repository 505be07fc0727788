import { ok } from '../../app/result.ts';
import { readRawRecord } from '../../db/store/put-raw-record.ts';
import { ownedBytes } from './owned-bytes.ts';
import type { Services } from './service.ts';
import { reading, type WorkDeps } from './work-context.ts';

export function createRawService(deps: WorkDeps): Services['raw.content'] {
  return reading(deps, 'raw.content', async ({ rawRecordId }, { casebook }) => {
    const record = readRawRecord(casebook.handle.read, rawRecordId);
    if (!record.ok) return record;
    const { name, mediaType, sha256, bytes } = record.value;
    return ok({ name, mediaType, sha256, bytes: ownedBytes(bytes) });
  });
}
