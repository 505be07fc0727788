import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { quantity } from '../../../app/report-document/quantity.ts';
import { reportDocument } from '../../../app/report-document/report-document.ts';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { documentJsonSchema } from '../../../app/report-document/document-json-schema.ts';
import { schemaRows } from './schema-rows.ts';

const page = readFileSync(new URL('../../../docs/report-document.md', import.meta.url), 'utf8').split('\n');

test.each([['Members', reportDocument], ['A quantity', quantity]] as const)('docs/report-document.md names everything of “%s” as the schema has it', (heading, schema) => {
  const start = page.indexOf(`## ${heading}`);
  expect(start).toBeGreaterThan(0);
  const rest = page.slice(start + 1);
  const end = rest.findIndex((line) => line.startsWith('## '));
  expect(rest.slice(0, end < 0 ? undefined : end).filter((line) => line.startsWith('| `'))).toEqual(schemaRows(schema));
});

test('docs/report-document.schema.json is that very schema, and a validator of others takes it', () => {
  const kept = JSON.parse(readFileSync(new URL('../../../docs/report-document.schema.json', import.meta.url), 'utf8')) as object;
  // To write it anew: JSON.stringify(documentJsonSchema(), null, 1).
  expect(kept).toEqual(JSON.parse(JSON.stringify(documentJsonSchema())));
  const validate = new Ajv2020({ strict: true, allowUnionTypes: true, validateFormats: false }).compile(kept);
  expect(validate({ schema: 'culet-report-document-1' })).toBe(false);
});
