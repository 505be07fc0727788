import type { Failure } from '../../app/contract/failure.ts';
import { canonicalJson } from '../../app/custody/canonical-json.ts';
import type { ChosenRecord } from '../../app/report-document/choose-attached.ts';
import { composeDocument, type DocumentParts } from '../../app/report-document/compose-document.ts';
import { ok, type Result } from '../../app/result.ts';
import type { ReadDb } from '../../db/handle.ts';
import { readRawRecord } from '../../db/store/put-raw-record.ts';
import type { Enclosure } from '../print/report/enclosure.ts';

export type ToEnclose = Omit<DocumentParts, 'records'> & { readonly records: readonly ChosenRecord[] };

function recordOf({ id, listed }: ChosenRecord, db: ReadDb): Result<Enclosure['records'][number] | null, Failure> {
  if (listed.attachedAs === null) return ok(null);
  const content = readRawRecord(db, id);
  if (!content.ok) return content;
  const photograph = listed.runs.length === 0;
  const of = listed.runs.length === 1 ? `run ${listed.runs[0]!}` : `runs ${listed.runs.join(', ')}`;
  return ok({
    name: listed.attachedAs, mediaType: listed.mediaType, photograph, bytes: content.value.bytes,
    description: photograph ? `Photograph ${listed.name}` : `Raw record of ${of}: ${listed.name}`,
  });
}

/** What travels inside a report: its document and the raw records that were chosen, each as it was kept. Refuses where one no longer has its digest. */
export function enclose({ records, ...parts }: ToEnclose, signed: boolean, db: ReadDb): Result<Enclosure, Failure> {
  const document = canonicalJson(composeDocument({ ...parts, records: records.map(({ listed }) => listed) }));
  const enclosed: Enclosure['records'][number][] = [];
  for (const chosen of records) {
    const record = recordOf(chosen, db);
    if (!record.ok) return record;
    if (record.value !== null) enclosed.push(record.value);
  }
  return ok({ document, records: enclosed, signed });
}
