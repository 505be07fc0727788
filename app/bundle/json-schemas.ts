import { z } from 'zod';
import { auditDocument, checkpointsDocument, indexDocument, manifestDocument } from './bundle-documents.ts';
import { caseDocument, custodyDocument } from './case-document.ts';

/** The schemas that Culet itself reads and writes by, under the name that a file's “schema” says. */
export const BUNDLE_SCHEMAS = {
  'culet-bundle-index-1': indexDocument,
  'culet-bundle-manifest-1': manifestDocument,
  'culet-case-1': caseDocument,
  'culet-custody-1': custodyDocument,
  'culet-audit-1': auditDocument,
  'culet-checkpoints-1': checkpointsDocument,
} as const;

/** Each of them as JSON Schema (draft 2020-12), with the path of its file in a bundle. */
export function jsonSchemas(): { readonly path: string; readonly schema: object }[] {
  return Object.entries(BUNDLE_SCHEMAS).map(([name, schema]) => ({ path: `schemas/${name}.schema.json`, schema: { title: name, ...z.toJSONSchema(schema) } }));
}
