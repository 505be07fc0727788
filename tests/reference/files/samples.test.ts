import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readSpectrumFile } from '../../../app/files/read-spectrum-file.ts';
import { slowness } from '../../fixtures/slowness.ts';

type Expected = {
  title: string | null; xunits: string | null; yunits: string | null; n: number; x_first: number; x_last: number;
  y_first: number; y_last: number; y_min: number; y_max: number; y_sum: number; x_order: 'ascending' | 'descending';
};

const folder = process.env['CULET_SAMPLES'];
const index = folder ? join(folder, 'expected.json') : '';
const available = folder !== undefined && existsSync(index);
if (!available) console.log('CULET_SAMPLES names no folder with expected.json: the real sample files are not tried.');

const expected = available ? (JSON.parse(readFileSync(index, 'utf8')) as Record<string, { blocks: Expected[] }>) : {};
/** Really damaged: to be refused, whatever a lenient reader makes of them. */
const REFUSED: Record<string, string> = { 'damaged-xydata.jdx': 'malformed-token', 'truncated.jdx': 'cut-off' };
/** Damaged, but usable: the warning that must be there. */
const WARNED: Record<string, string> = { 'broken-check-value.jdx': 'y-check', 'infrared-c.dx': 'y-check', 'isopropanol-asdf.jdx': '' };

/** expected.json has ten significant digits. */
const close = (found: number, wanted: number): void => expect(Math.abs(found - wanted)).toBeLessThanOrEqual(1e-8 * Math.max(Math.abs(wanted), 1e-3));

describe.skipIf(!available)('real files', () => {
  test.each(Object.keys(expected))('%s', (name) => {
    const result = readSpectrumFile(name, readFileSync(join(folder!, name)));
    if (REFUSED[name] !== undefined) {
      expect(result.ok).toBe(false);
      if (!result.ok) expect(result.error).toMatchObject({ code: REFUSED[name], line: expect.any(Number) as number });
      return;
    }
    if (!result.ok) throw new Error(result.error.message);
    const blocks = expected[name]!.blocks;
    expect(result.value.blocks).toHaveLength(blocks.length);
    result.value.blocks.forEach((block, i) => {
      const want = blocks[i]!;
      expect(block.x).toHaveLength(want.n);
      expect(block.y).toHaveLength(want.n);
      close(block.x[0]!, want.x_first);
      close(block.x.at(-1)!, want.x_last);
      close(block.y[0]!, want.y_first);
      close(block.y.at(-1)!, want.y_last);
      close(block.y.reduce((a, v) => Math.min(a, v)), want.y_min);
      close(block.y.reduce((a, v) => Math.max(a, v)), want.y_max);
      close(block.y.reduce((a, v) => a + v, 0), want.y_sum);
      expect(block.x.at(-1)! > block.x[0]! ? 'ascending' : 'descending').toBe(want.x_order);
      if (want.title !== null) expect(block.title).toBe(want.title);
      if (want.xunits !== null) expect(block.xUnitText).toBe(want.xunits);
      if (want.yunits !== null) expect(block.yUnitText).toBe(want.yunits);
    });
    const warned = WARNED[name];
    if (warned) expect(result.value.warnings.map((w) => w.code)).toContain(warned);
  });
  test('18,669 compressed points take a few milliseconds', () => {
    const bytes = readFileSync(join(folder!, 'sqz-dup.jdx'));
    const times = Array.from({ length: 8 }, () => {
      const start = performance.now();
      readSpectrumFile('sqz-dup.jdx', bytes);
      return performance.now() - start;
    });
    // The best of several, so that a busy machine does not fail it.
    expect(Math.min(...times)).toBeLessThan(20 * slowness());
  });
});
