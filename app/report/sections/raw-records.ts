import { z } from 'zod';
import { rawRecordParts } from '../content/raw-record-part.ts';
import { defineSection } from './section.ts';

export const rawRecordsPart = z.object({
  section: z.literal('raw-records'),
  records: z.array(z.object({
    run: z.string(), name: z.string(), size: z.string(), sha256: z.string(),
    /** Whether it travels inside the PDF; not known in reports from before that was so. */
    attached: z.boolean().optional(),
  })),
});
export type RawRecordsPart = z.infer<typeof rawRecordsPart>;

export const rawRecordsSection = defineSection<RawRecordsPart>({
  id: 'raw-records', title: 'Raw records', tells: 'every file as the instruments wrote it, with its digest',
  clauses: [], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: rawRecordsPart,
  build: (source) => ({ section: 'raw-records', records: rawRecordParts(source) }),
  lines: (part) => part.records.map((record) => ({ key: `The raw record ${record.run} ${record.name}`, text: `SHA-256 ${record.sha256}` })),
});
