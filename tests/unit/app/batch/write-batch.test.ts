import { expect, test } from 'vitest';
import { batchRow, failedRow } from '../../../../app/batch/batch-row.ts';
import { batchToCsv, batchToJson } from '../../../../app/batch/write-batch.ts';

const row = { ...failedRow('a,"b".txt', null, '=SUM(A1)', { code: 'no-data', message: 'Line one\nline two' }), centres: ['NV0', 'SIV'], error: { code: 'no-data', message: 'Line one\nline two' } };

test('cells keep commas, quotes and lines together, and no cell is a formula', () => {
  const [head, ...rest] = batchToCsv([row]).split('\r\n');
  expect(head).toMatch(/^file,curve,title,diamond line/);
  expect(rest.join('\r\n')).toContain('"a,""b"".txt"');
  expect(rest.join('\r\n')).toContain("'=SUM(A1)");
  expect(rest.join('\r\n')).toContain('"Line one\nline two"');
});

test('JSON gives the rows back', () => {
  expect((JSON.parse(batchToJson([row])) as unknown[]).map((r) => batchRow.parse(r))).toEqual([row]);
});
