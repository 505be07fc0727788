import { parse } from 'spc-parser';
import { describe, expect, test } from 'vitest';
import { readSpectrumFile } from '../../../app/files/read-spectrum-file.ts';
import { madeOldSpc, madeSpc } from '../../unit/app/files/made-spc.ts';

// A second reader, the package spc-parser, whose authors hold it against files of real instruments, must find the same numbers. It turns
// descending curves round, so the files here ascend, and are whole: it reads on past the end of a file that was cut off.
const Y = Array.from({ length: 60 }, (_, i) => 100 + 50 * Math.sin(i / 5) - i);
const UNEVEN = Y.map((_, i) => 400 + i + 0.01 * i * i);
const files: readonly (readonly [string, Uint8Array])[] = [
  ['even, floating point', madeSpc({ curves: [{ y: Y }], firstX: 500, lastX: 618 })],
  ['even, 32 bits', madeSpc({ curves: [{ y: Y }], firstX: 500, lastX: 618, exponent: 9 })],
  ['even, 16 bits', madeSpc({ curves: [{ y: Y }], firstX: 500, lastX: 618, exponent: 9, short: true })],
  ['even, big-endian', madeSpc({ curves: [{ y: Y }], firstX: 500, lastX: 618, bigEndian: true })],
  ['listed', madeSpc({ curves: [{ y: Y }], listed: UNEVEN })],
  ['several, one axis', madeSpc({ curves: [{ y: Y }, { y: Y.map((v) => v * 3) }], firstX: 1, lastX: 60, exponent: 9, subExponents: [9, 11] })],
  ['several, listed', madeSpc({ curves: [{ y: Y }, { y: Y.map((v) => -v) }], listed: UNEVEN })],
  ['several, own axes', madeSpc({ curves: [{ x: UNEVEN, y: Y }, { x: UNEVEN.slice(0, 30), y: Y.slice(0, 30) }] })],
  ['old, 32 bits', madeOldSpc({ curves: [{ y: Y }], firstX: 400, lastX: 4000, exponent: 9 })],
  ['old, 16 bits', madeOldSpc({ curves: [{ y: Y }], firstX: 400, lastX: 4000, exponent: 9, short: true })],
];

describe('SPC files read as another reader reads them', () => {
  test.each(files)('%s', (_name, bytes) => {
    const own = readSpectrumFile('made.spc', bytes);
    if (!own.ok) throw new Error(own.error.message);
    const whole = new Uint8Array(bytes);
    const other = parse(whole.buffer);
    // In the old form the first subheader belongs to the header of 256 bytes.
    expect(own.value.blocks.length).toBe(other.spectra.length);
    other.spectra.forEach(({ variables: { x, y } }, k) => {
      const block = own.value.blocks[k]!;
      expect(block.x.length).toBe(x.data.length);
      for (let i = 0; i < block.x.length; i++) {
        expect(Math.abs(block.x[i]! - x.data[i]!)).toBeLessThan(1e-9 * Math.abs(x.data[i]!) + 1e-12);
        expect(block.y[i]).toBe(y.data[i]);
      }
    });
  });
});
