import { describe, expect, test } from 'vitest';
import { cell, table } from '../../../../main/print/blocks/table.ts';
import { Sheet } from '../../../../main/print/sheet.ts';
import { readPdf } from './read-pdf.ts';

async function pagesOf(rows: number): Promise<readonly string[]> {
  const sheet = new Sheet({ digest: 'a'.repeat(64), pageSize: 'A4', language: 'en', createdAt: new Date(0), runningHead: 0, title: 'Rows', author: 'Invented', subject: 'Rows' });
  table(sheet, sheet.root, [{ head: 'Row', share: 1 }], Array.from({ length: rows }, (_, n) => [cell(`row-${n + 1}.`)]));
  return (await readPdf(await sheet.finish())).pages;
}

const rowsIn = (text: string): number => [...text.matchAll(/row-\d+\./g)].length;

describe('rows of a table over pages', () => {
  test('the last row never stands alone under a repeated head', async () => {
    const fits = rowsIn((await pagesOf(200))[0]!);
    expect(fits).toBeGreaterThan(20);
    expect((await pagesOf(fits)).map(rowsIn)).toEqual([fits]);
    expect((await pagesOf(fits + 1)).map(rowsIn)).toEqual([fits - 1, 2]);
    expect((await pagesOf(fits + 2)).map(rowsIn)).toEqual([fits, 2]);
  });
});
