import { z } from 'zod';
import { DOCUMENT_SCHEMA, reportDocument } from './report-document.ts';

/**
 * The schema of report.json as JSON Schema (draft 2020-12), for programs of others; kept as docs/report-document.schema.json.
 * It names what must be there and lets further members pass: a later version of Culet may add some.
 */
export const documentJsonSchema = (): object => ({
  title: DOCUMENT_SCHEMA,
  ...z.toJSONSchema(reportDocument, { io: 'input', override: ({ jsonSchema }) => { delete (jsonSchema as { whole?: unknown }).whole; } }),
});
